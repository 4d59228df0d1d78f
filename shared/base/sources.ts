/**
 * Every reference once, cited by key in doc comments and tests.
 *
 * `seen` says how we know it: `read` in the source or in an independent open implementation that transcribes it;
 * `abstract` only; `memory` not opened by us, so never alone behind a pass or fail limit.
 */
export interface Source {
  readonly title: string
  readonly seen: 'read' | 'abstract' | 'memory'
}

export const SOURCES = {
  Acklam2003: {
    title: 'P. J. Acklam, An algorithm for computing the inverse normal cumulative distribution function, 2003',
    seen: 'memory',
  },
  BlackmanVigna2021: {
    title: 'D. Blackman & S. Vigna, Scrambled linear pseudorandom number generators, ACM TOMS 47(4), 2021',
    seen: 'memory',
  },
  HyndmanFan1996: {
    title: 'R. J. Hyndman & Y. Fan, Sample quantiles in statistical packages, Am. Stat. 50, 361-365, 1996',
    seen: 'memory',
  },
  NIST811: {
    title: 'NIST Special Publication 811, Guide for the use of the SI, appendix B (conversion factors)',
    seen: 'memory',
  },
  RFC3629: { title: 'IETF RFC 3629, UTF-8, a transformation format of ISO 10646, 2003', seen: 'memory' },
  RFC4180: { title: 'IETF RFC 4180, Common format and MIME type for CSV files, 2005', seen: 'memory' },
  RFC8259: { title: 'IETF RFC 8259, The JavaScript Object Notation (JSON) data interchange format, 2017', seen: 'memory' },
  WilsonHilferty1931: {
    title: 'E. B. Wilson & M. M. Hilferty, The distribution of chi-square, PNAS 17, 684-688, 1931',
    seen: 'memory',
  },
} as const satisfies Record<string, Source>
