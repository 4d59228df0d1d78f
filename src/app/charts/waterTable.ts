/**
 * One hue from pale to dark, for pictures of sound: in even steps of lightness, so that it reads the same in grey.
 *
 * Baked: hue 187 in OKLCH, lightness 0.975 to 0.24 in 33 even steps; red held at the dark end, where rounding
 * would let it rise.
 */
const STEPS = [
  '#f3f8f7',
  '#e3f3f1',
  '#d5eeea',
  '#c8e8e4',
  '#bbe2dd',
  '#afdcd6',
  '#a3d5cf',
  '#97cfc8',
  '#8bc9c2',
  '#80c2bb',
  '#76bcb4',
  '#6bb5ad',
  '#61aea6',
  '#58a79f',
  '#4fa098',
  '#469992',
  '#3d928b',
  '#358b84',
  '#2e847d',
  '#277d76',
  '#21766f',
  '#1b6f69',
  '#166862',
  '#11615b',
  '#0e5a54',
  '#0c534e',
  '#0b4c47',
  '#0a4541',
  '#0a3e3a',
  '#0a3834',
  '#0a312e',
  '#0a2a28',
  '#0a2321',
]

const RGB = STEPS.map((hex) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)))

/**
 * Colours of the 256 shades.
 *
 * @param look On dark ground the loud is pale: what matters stands out from the ground.
 * @returns Red, green, blue of each shade in turn, 0 to 255; shade 0 is the quietest.
 */
export function waterTable(look: 'light' | 'dark'): Uint8Array {
  const table = new Uint8Array(256 * 3)
  for (let shade = 0; shade < 256; shade++) {
    const at = ((look === 'light' ? shade : 255 - shade) / 255) * (RGB.length - 1)
    const below = Math.min(RGB.length - 2, Math.floor(at))
    for (let c = 0; c < 3; c++) {
      const from = RGB[below]![c]!
      table[shade * 3 + c] = Math.round(from + (at - below) * (RGB[below + 1]![c]! - from))
    }
  }
  return table
}
