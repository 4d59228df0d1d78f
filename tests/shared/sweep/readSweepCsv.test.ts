import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'
import { close } from '../../support/close'

const read = (...lines: string[]) => readSweepCsv(lines.join('\n'), 'sweep.csv')
const messageOf = (...lines: string[]): string => {
  try {
    read(...lines)
  } catch (error) {
    if (error instanceof FormatError) return error.message
    throw error
  }
  return 'no error'
}
const HEADER = 'point,along_m,file'

describe('a sheet', () => {
  it('reads every column of the format', () => {
    const { rows, problems } = read(
      'point,along_m,file,air,take,sweep,offset_m,time,contact,air_kpa,note',
      '6,5.0,clips/06-off.wav,off,2,fine,-0.4,2026-05-04T09:30:00+02:00,spike,40,"wet, ""soft"""',
    )
    expect(problems).toEqual([])
    expect(rows).toEqual([
      {
        point: 6,
        alongM: 5,
        file: 'clips/06-off.wav',
        air: 'off',
        take: 2,
        sharedTake: true,
        sweep: 'fine',
        offsetM: -0.4,
        timeS: Date.parse('2026-05-04T09:30:00+02:00') / 1000,
        contact: 'spike',
        airKpa: 40,
        note: 'wet, "soft"',
        unknown: {},
      },
    ])
  })

  it('needs no more than point, along and file; the rest has its defaults', () => {
    expect(read(HEADER, '1,0,1.wav').rows[0]).toEqual({
      point: 1,
      alongM: 0,
      file: '1.wav',
      air: 'on',
      take: 1,
      sharedTake: false,
      sweep: '1',
      offsetM: 0,
      timeS: null,
      contact: null,
      airKpa: null,
      note: '',
      unknown: {},
    })
  })

  it('takes feet, at 0.3048 m by definition', () => {
    close(read('point,along_ft,file', '1,10,1.wav').rows[0]!.alongM, 3.048, { rel: 1e-15, because: 'one product' })
  })

  it('keeps columns it does not know, as they are', () => {
    const { rows } = read('Crew,point,along_m,file,__proto__,constructor', ' A ,1,0,1.wav,x,y')
    expect(rows[0]!.unknown).toEqual({ Crew: ' A ', constructor: 'y' })
    expect(Object.hasOwn(rows[0]!.unknown, '__proto__')).toBe(false)
    expect(read('point,along_m,file,__proto__', '1,0,1.wav,x').problems[0]!.key).toBe('sheet_column_left_out')
  })

  it('drops the empty nameless columns a spreadsheet leaves, and keeps a nameless one that holds something', () => {
    expect(read(`${HEADER},,`, '1,0,1.wav,,').rows[0]!.unknown).toEqual({})
    expect(read(`${HEADER},,`, '1,0,1.wav,,x').rows[0]!.unknown).toEqual({ column_5: 'x' })
  })

  it('may have its columns in any order, its names in any case, cells left off and rows that hold nothing', () => {
    const { rows } = read('File , ALONG_M,Point,note', '', '1.wav, 2.5 ,1', ',,,', '2.wav,3.5,2,dry', '')
    expect(rows.map(({ file, alongM, point, note }) => [file, alongM, point, note])).toEqual([
      ['1.wav', 2.5, 1, ''],
      ['2.wav', 3.5, 2, 'dry'],
    ])
  })

  it('may tell distances out of order and points in any order', () => {
    expect(read(HEADER, '2,8,2.wav', '1,9,1.wav', '3,1,3.wav').rows.map((row) => row.alongM)).toEqual([8, 9, 1])
  })

  it('shares a setting-down only when it has a take column, an empty cell being take 1', () => {
    const { rows } = read('point,along_m,file,air,take', '1,0,a.wav,on,', '1,0,b.wav,off,1')
    expect(rows.map(({ take, sharedTake }) => [take, sharedTake])).toEqual([
      [1, true],
      [1, true],
    ])
  })
})

describe('the form of a sheet', () => {
  const expected = read('point,along_m,file,note', '1,2.5,1.wav,a').rows

  it('may have a byte order mark, CRLF, LF or CR', () => {
    for (const end of ['\r\n', '\n', '\r']) {
      const text = `\ufeff${['point,along_m,file,note', '1,2.5,1.wav,a', ''].join(end)}`
      expect(readSweepCsv(text, 'sweep.csv').rows).toEqual(expected)
    }
  })

  it('may be delimited by semicolon or tab, then with decimal commas too', () => {
    expect(read('point;along_m;file;note', '1;2,5;1.wav;a').rows).toEqual(expected)
    expect(read('point;along_m;file;note', '1;2.5;1.wav;a').rows).toEqual(expected)
    expect(read('point\talong_m\tfile\tnote', '1\t2,5\t1.wav\ta').rows).toEqual(expected)
  })

  it('may quote anything, the header too, under any delimiter', () => {
    expect(read('"point","along_m","file","note"', '"1","2.5","1.wav","a"').rows).toEqual(expected)
    expect(read('"point";"along_m";"file";"note"', '"1";"2,5";"1.wav";"a"').rows).toEqual(expected)
  })

  it('tells its delimiter from the columns it makes known, not from how many there are', () => {
    expect(read('point;along_m;file;a, b, c, d, e', '1;2,5;1.wav;x').rows[0]!.alongM).toBe(2.5)
  })

  it('may have line breaks and delimiters in quotes, and plain quotes inside a cell', () => {
    const { rows } = read('note,point,along_m,file', '"a\r\nb,c",1,2.5,1.wav', '2" pipe,2,3,2.wav')
    expect(rows.map(({ note }) => note)).toEqual(['a\r\nb,c', '2" pipe'])
  })

  it('takes the long minus of word processors', () => {
    expect(read(HEADER, '1,\u22121.5,1.wav').rows[0]!.alongM).toBe(-1.5)
  })
})

describe('what is odd in a sheet without being wrong', () => {
  it('is told of once: a contact not known, a point in two places, a clip used twice', () => {
    const { rows, problems } = read(
      'point,along_m,file,air,contact',
      '1,0,1.wav,on,boot',
      '1,0.5,1.wav,off,plate',
      '2,1,2.wav,on,Hand',
    )
    expect(rows.map((row) => row.contact)).toEqual(['other', 'plate', 'hand'])
    expect(problems).toEqual([
      {
        key: 'sheet_contact_unknown',
        severity: 'note',
        values: { row: 2, value: 'boot', known: 'spike, plate, hand, other' },
      },
      { key: 'sheet_point_in_two_places', severity: 'note', values: { point: 1, along_m: 0, other_along_m: 0.5 } },
      { key: 'sheet_file_twice', severity: 'note', values: { file: '1.wav' } },
    ])
  })

  it('is not that two sweeps number their points alike', () => {
    expect(read('point,along_m,file,sweep', '1,0,a.wav,coarse', '1,4,b.wav,fine').problems).toEqual([])
  })
})

describe('a wrong sheet is refused with the row and the mend', () => {
  const cases: [string, string[], string][] = [
    ['an empty file', [''], 'sweep.csv: is empty; the first row must name the columns point, along_m and file'],
    ['a header alone', [HEADER], 'sweep.csv: names no clip; write one row for each clip'],
    [
      'no point',
      ['number,along_m,file', '1,0,1.wav'],
      'sweep.csv, row 1: the column point is missing; name it in the first row',
    ],
    [
      'no file',
      ['point,along_m,files', '1,0,1.wav'],
      'sweep.csv, row 1: the column file is missing; is "files" meant?',
    ],
    [
      'no distance',
      ['point,along,file', '1,0,1.wav'],
      'sweep.csv, row 1: the column along_m or along_ft is missing; is "along" meant?',
    ],
    [
      'both units',
      ['point,along_m,along_ft,file', '1,0,0,1.wav'],
      'sweep.csv, row 1: along_m and along_ft are both there; keep one of them',
    ],
    [
      'a column twice',
      ['point,along_m,file,Point', '1,0,1.wav,1'],
      'sweep.csv, row 1: the column "Point" stands twice; keep one of them',
    ],
    [
      'text for a number',
      [HEADER, '1,0,1.wav', '2,near,2.wav'],
      'sweep.csv, row 3, along_m: is "near"; write a number, like 3.5',
    ],
    [
      'a row that quoted line breaks moved down',
      [`${HEADER},note`, '1,0,1.wav,"a\nb\nc"', '2,x,2.wav,'],
      'sweep.csv, row 5, along_m: is "x"; write a number, like 3.5',
    ],
    ['NaN', [HEADER, '1,NaN,1.wav'], 'sweep.csv, row 2, along_m: is "NaN"; write a number, like 3.5'],
    [
      'Infinity',
      [HEADER, '1,1e999,1.wav'],
      'sweep.csv, row 2, along_m: is "1e999"; a number from -10000 to 10000 is expected',
    ],
    [
      'a hexadecimal number',
      [HEADER, '1,0x10,1.wav'],
      'sweep.csv, row 2, along_m: is "0x10"; write a number, like 3.5',
    ],
    [
      'a decimal comma between commas',
      [HEADER, '1,2,5,1.wav'],
      'sweep.csv, row 2: has 4 cells and the header 3; put text that holds a delimiter in double quotes, and numbers with a point',
    ],
    [
      'a quoted decimal comma between commas',
      [HEADER, '1,"2,5",1.wav'],
      'sweep.csv, row 2, along_m: is "2,5"; write a number, like 3.5',
    ],
    [
      'two decimal marks',
      ['point;along_m;file', '1;1.234,5;1.wav'],
      'sweep.csv, row 2, along_m: is "1.234,5"; write a number, like 3.5',
    ],
    ['no distance in a row', [HEADER, '1,,1.wav'], 'sweep.csv, row 2, along_m: is empty; write a number'],
    ['half a point', [HEADER, '1.5,0,1.wav'], 'sweep.csv, row 2, point: is "1.5"; write a whole number, like 6'],
    ['no point in a row', [HEADER, ',0,1.wav'], 'sweep.csv, row 2, point: is empty; write a number'],
    [
      'a point past all counting',
      [HEADER, '12345678,0,1.wav'],
      'sweep.csv, row 2, point: is "12345678"; a whole number up to 1000000 is expected',
    ],
    ['an air that is neither', [`${HEADER},air`, '1,0,1.wav,yes'], 'sweep.csv, row 2, air: is "yes"; write on or off'],
    [
      'a time without an offset',
      [`${HEADER},time`, '1,0,1.wav,2026-05-04T09:30:00'],
      'sweep.csv, row 2, time: is "2026-05-04T09:30:00"; write date, time and offset like 2026-05-04T09:30:00+02:00',
    ],
    [
      'a negative pressure',
      [`${HEADER},air_kpa`, '1,0,1.wav,-4'],
      'sweep.csv, row 2, air_kpa: is "-4"; a number from 0 to 10000 is expected',
    ],
    [
      'a row twice',
      [HEADER, '1,0,1.wav', '2,1,2.wav', '1,0,3.wav'],
      'sweep.csv, row 4: is point 1, take 1, air on again, as row 2; give each take its own number in a take column',
    ],
    [
      'a quote never closed',
      [`${HEADER},note`, '1,0,1.wav,a', '2,1,2.wav,"b'],
      'sweep.csv, row 3: a double quote opens a cell here and none closes it; add one',
    ],
    [
      'text after a closing quote',
      [HEADER, '1,0,"1".wav'],
      'sweep.csv, row 2: text follows a closing double quote; write quotes inside a quoted cell twice',
    ],
    [
      'an absolute path',
      [HEADER, '1,0,/etc/passwd'],
      'sweep.csv, row 2, file: "/etc/passwd" is an absolute path; write it from the folder on',
    ],
    [
      'a drive letter',
      [HEADER, '1,0,c:1.wav'],
      'sweep.csv, row 2, file: "c:1.wav" is an absolute path; write it from the folder on',
    ],
    [
      'a path that leaves',
      [HEADER, '1,0,a/../../1.wav'],
      'sweep.csv, row 2, file: "a/../../1.wav" leaves the folder with ".."; put the clip into the folder',
    ],
    [
      'a backslash',
      [HEADER, '1,0,clips\\1.wav'],
      'sweep.csv, row 2, file: "clips\\1.wav" holds a backslash; write forward slashes, like clips/06-on.wav',
    ],
    [
      'a NUL',
      [HEADER, '1,0,1.wav\0'],
      'sweep.csv, row 2, file: "1.wav\\u0000" holds a control character; write the plain name of the clip',
    ],
    ['no file in a row', [HEADER, '1,0,'], 'sweep.csv, row 2, file: is empty; write the name of the clip'],
    [
      'a folder for a file',
      [HEADER, '1,0,clips/'],
      'sweep.csv, row 2, file: "clips/" is no name of a file; write one like clips/06-on.wav',
    ],
  ]
  it.each(cases)('%s', (_, lines, message) => {
    expect(messageOf(...lines)).toBe(message)
  })

  it('anything over-long', () => {
    expect(messageOf(HEADER, `1,0,${'a/'.repeat(600)}1.wav`)).toContain('row 2, file')
    expect(messageOf(HEADER, `1,0,${'a'.repeat(300)}.wav`)).toContain('holds a name of more than 255 characters')
    expect(messageOf(`${HEADER},note`, `1,0,1.wav,${'x'.repeat(10_001)}`)).toContain('a cell holds 10001 characters')
    expect(messageOf(HEADER, ...Array.from({ length: 1001 }, (_, i) => `${i},0,${i}.wav`))).toBe(
      'sweep.csv, row 1002: at most 1000 rows are read; split the sheet',
    )
    expect(messageOf(HEADER, `1,0,1.wav${','.repeat(300)}`)).toContain('has more than 200 cells')
    expect(messageOf(HEADER, 'x'.repeat(8_000_001))).toContain(', and at most 8000000 are read; split the sheet')
  })

  it('in one line, whatever stands in the cell', () => {
    expect(messageOf(HEADER, '1,"a\n\u001b[2Jb",1.wav')).toBe(
      'sweep.csv, row 2, along_m: is "a\\n\\u001b[2Jb"; write a number, like 3.5',
    )
  })
})

describe('no sheet, however made,', () => {
  it('throws anything but one line with its name (seed 15)', () => {
    const piece = fc.constantFrom(
      'point',
      'along_m',
      'file',
      'air',
      'time',
      ',',
      ';',
      '\t',
      '"',
      '\n',
      '\r\n',
      '1',
      '-',
      '.',
      '1.wav',
      'on',
      ' ',
      'é',
      '\0',
    )
    const body = fc
      .array(fc.oneof(piece, fc.string({ maxLength: 3 })), { maxLength: 40 })
      .map((pieces) => pieces.join(''))
    fc.assert(
      fc.property(fc.constantFrom('', `${HEADER}\n`, `${HEADER},air,take,time,contact\n`), body, (header, text) => {
        const message = messageOf(header + text)
        if (message !== 'no error') expect(message).toMatch(/^sweep\.csv(?:, row \d+(?:, \w+)?)?: [^\n\r]+$/)
      }),
      { seed: 15, numRuns: 1000 },
    )
  })

  it('keeps the reader busy for long: blank headers, endless digits and quotes', () => {
    expect(messageOf(' '.repeat(1_000_000))).toContain('is empty')
    const digits = `${'1'.repeat(9000)}x`
    expect(messageOf(HEADER, ...Array.from({ length: 500 }, (_, i) => `${i},0,${i}.wav,${digits}`))).toContain(
      'has 4 cells',
    )
    expect(messageOf(`${HEADER},air_kpa`, `1,0,1.wav,${digits}`)).toContain('row 2, air_kpa')
    expect(messageOf(`${HEADER},note`, `1,0,1.wav,"${'""'.repeat(4000)}"`)).toBe('no error')
    expect(messageOf(`${HEADER},note`, `1,0,1.wav,"${'""'.repeat(200_000)}`)).toContain('none closes it')
  })
})

describe('what the sheet tells of the phone', () => {
  const read = (cells: string) =>
    readSweepCsv(`point,along_m,file,processing,device_hz,ended_by\n1,0,1.wav,${cells}\n`, 'sweep.csv')

  it('is what stayed on, the rate of the microphone, and why the clip is short', () => {
    expect(read('Gain  echo,16000,unplugged').rows[0]!.phone).toEqual({
      processing: ['echo', 'gain'],
      deviceHz: 16_000,
      endedBy: 'unplugged',
    })
  })

  it('is not there when the cells are empty', () => {
    expect(read(',,').rows[0]).not.toHaveProperty('phone')
  })

  it('names words that it does not know, and leaves them out', () => {
    const { rows, problems } = read('noise reverb,,asleep')
    expect(rows[0]!.phone).toEqual({ processing: ['noise'], deviceHz: null, endedBy: null })
    expect(problems.map(({ key, values }) => [key, values.value])).toEqual([
      ['sheet_phone_unknown', 'reverb'],
      ['sheet_phone_unknown', 'asleep'],
    ])
  })

  it('refuses a rate that is none', () => {
    expect(() => read(',fast,')).toThrow('sweep.csv, row 2, device_hz: is "fast"; write a number, like 3.5')
  })
})
