import { createHash, generateKeyPairSync, randomBytes, sign } from 'node:crypto'
import { isIP } from 'node:net'

// Node makes keys and signs, but writes no certificates. What one needs of DER (ITU-T X.690) is small enough to stand here;
// packages that can all of X.509 bring dozens of others. The structure is that of RFC 5280, section 4.1.

const DAY_MS = 86_400_000
const OID = {
  commonName: [2, 5, 4, 3],
  ecdsaWithSha256: [1, 2, 840, 10045, 4, 3, 2],
  subjectKeyIdentifier: [2, 5, 29, 14],
  keyUsage: [2, 5, 29, 15],
  subjectAltName: [2, 5, 29, 17],
  basicConstraints: [2, 5, 29, 19],
  extKeyUsage: [2, 5, 29, 37],
  serverAuth: [1, 3, 6, 1, 5, 5, 7, 3, 1],
}

/**
 * A certificate that vouches for itself, and its key: on a curve (P-256), for a month.
 *
 * @param {readonly string[]} names Host names and addresses it is for; they stand as subjectAltName.
 * @param {number} [nowMs] Milliseconds since 1970.
 * @returns {{ key: string, cert: string }} As PEM.
 */
export function certificate(names, nowMs = Date.now()) {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  const publicBytes = publicKey.export({ type: 'spki', format: 'der' })
  const algorithm = sequence(objectId(OID.ecdsaWithSha256))
  const name = sequence(
    der(0x31, sequence(objectId(OID.commonName), der(0x0c, Buffer.from('Yardhark on this network')))),
  )
  const serial = randomBytes(16)
  serial[0] = (serial[0] & 0x3f) | 0x40 // positive, and of full length
  const extensions = [
    extension(OID.basicConstraints, true, sequence()),
    extension(OID.keyUsage, true, der(0x03, Buffer.from([7, 0x80]))), // digitalSignature
    extension(OID.extKeyUsage, false, sequence(objectId(OID.serverAuth))),
    extension(OID.subjectAltName, false, sequence(...names.map(generalName))),
    extension(OID.subjectKeyIdentifier, false, der(0x04, createHash('sha1').update(publicBytes).digest())),
  ]
  const signed = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))), // version 3
    der(0x02, serial),
    algorithm,
    name,
    sequence(time(nowMs - DAY_MS), time(nowMs + 30 * DAY_MS)), // a phone's clock may be late
    name,
    publicBytes,
    der(0xa3, sequence(...extensions)),
  )
  const signature = der(0x03, Buffer.concat([Buffer.of(0), sign('sha256', signed, privateKey)]))
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: pem('CERTIFICATE', sequence(signed, algorithm, signature)),
  }
}

function extension(id, isCritical, content) {
  return sequence(objectId(id), ...(isCritical ? [der(0x01, Buffer.of(0xff))] : []), der(0x04, content))
}

function generalName(name) {
  return isIP(name) === 0 ? der(0x82, Buffer.from(name, 'latin1')) : der(0x87, addressBytes(name))
}

/** 4 or 16 bytes of an address. */
function addressBytes(address) {
  if (isIP(address) === 4) return Buffer.from(address.split('.').map(Number))
  const [head, tail] = address.split('%')[0].split('::')
  const groups = (part) => (part ? part.split(':').map((group) => Number.parseInt(group, 16)) : [])
  const [first, last] = [groups(head), groups(tail)]
  const all = [...first, ...Array(8 - first.length - last.length).fill(0), ...last]
  return Buffer.from(all.flatMap((group) => [group >> 8, group & 0xff]))
}

/** As UTCTime, which RFC 5280 asks for until 2049. */
function time(ms) {
  return der(0x17, Buffer.from(`${new Date(ms).toISOString().replace(/[-:T]/g, '').slice(2, 14)}Z`))
}

function objectId([first, second, ...rest]) {
  return der(0x06, Buffer.from([40 * first + second, ...rest.flatMap(base128)]))
}

function base128(value) {
  const digits = [value & 0x7f]
  for (let left = value >> 7; left > 0; left >>= 7) digits.unshift((left & 0x7f) | 0x80)
  return digits
}

function sequence(...parts) {
  return der(0x30, Buffer.concat(parts))
}

function der(tag, content) {
  if (content.length < 0x80) return Buffer.concat([Buffer.of(tag, content.length), content])
  const length = Buffer.from(content.length.toString(16).padStart(content.length > 0xff ? 4 : 2, '0'), 'hex')
  return Buffer.concat([Buffer.of(tag, 0x80 | length.length), length, content])
}

function pem(label, bytes) {
  return `-----BEGIN ${label}-----\n${bytes.toString('base64').replace(/.{1,64}/g, '$&\n')}-----END ${label}-----\n`
}
