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
  Friedman2001: {
    title:
      'J. H. Friedman, Greedy function approximation: a gradient boosting machine, Annals of Statistics 29, 1189-1232, 2001',
    seen: 'memory',
  },
  ChenGuestrin2016: {
    title: 'T. Chen & C. Guestrin, A scalable tree boosting system, Proc. 22nd ACM SIGKDD Conf., 785-794, 2016',
    seen: 'memory',
  },
  Platt1999: {
    title: 'J. C. Platt, Probabilistic outputs for support vector machines, Advances in Large Margin Classifiers, 1999',
    seen: 'memory',
  },
  HanleyMcNeil1982: {
    title: 'J. A. Hanley & B. J. McNeil, The meaning and use of the area under a ROC curve, Radiology 143, 29-36, 1982',
    seen: 'memory',
  },
  HosmerLemeshow2000: {
    title: 'D. W. Hosmer & S. Lemeshow, Applied logistic regression, 2nd ed., 2000',
    seen: 'memory',
  },
  Brier1950: {
    title: 'G. W. Brier, Verification of forecasts expressed in terms of probability, Mon. Weather Rev. 78, 1-3, 1950',
    seen: 'memory',
  },
  Fisher1936: {
    title:
      'R. A. Fisher, The use of multiple measurements in taxonomic problems, Ann. Eugenics 7, 179-188, 1936 (data set)',
    seen: 'memory',
  },
  Acklam2003: {
    title: 'P. J. Acklam, An algorithm for computing the inverse normal cumulative distribution function, 2003',
    seen: 'memory',
  },
  BluetoothHFP: {
    title: 'Bluetooth SIG, Hands-Free Profile 1.6 and later: voice at 8 kHz (CVSD) or 16 kHz (mSBC)',
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
  MediaCapture: {
    title:
      'W3C, Media Capture and Streams: echoCancellation, noiseSuppression, autoGainControl, sampleRate, sampleSize',
    seen: 'memory',
  },
  RFC3339: { title: 'IETF RFC 3339, Date and time on the Internet: timestamps, 2002', seen: 'memory' },
  RFC3629: { title: 'IETF RFC 3629, UTF-8, a transformation format of ISO 10646, 2003', seen: 'memory' },
  RFC4180: { title: 'IETF RFC 4180, Common format and MIME type for CSV files, 2005', seen: 'memory' },
  RFC8259: {
    title: 'IETF RFC 8259, The JavaScript Object Notation (JSON) data interchange format, 2017',
    seen: 'memory',
  },
  WilsonHilferty1931: {
    title: 'E. B. Wilson & M. M. Hilferty, The distribution of chi-square, PNAS 17, 684-688, 1931',
    seen: 'memory',
  },
  CRCWater: {
    title: 'Properties of water at 20 °C as in the handbooks: density 998.2 kg/m³, surface tension 0.0728 N/m',
    seen: 'memory',
  },
  DavidsonSchuler1960: {
    title:
      'J. F. Davidson & B. O. G. Schuler, Bubble formation at an orifice in an inviscid liquid, Trans. Inst. Chem. Eng. 38, 335-342, 1960',
    seen: 'memory',
  },
  Leighton1994: {
    title: 'T. G. Leighton, The Acoustic Bubble, Academic Press, 1994',
    seen: 'memory',
  },
  Medwin1977: {
    title:
      'H. Medwin, Counting bubbles acoustically: a review, Ultrasonics 15, 7-13, 1977, after C. Devin, JASA 31, 1654-1667, 1959; coefficients as an open ocean-acoustics code has them',
    seen: 'read',
  },
  Minnaert1933: {
    title:
      'M. Minnaert, On musical air-bubbles and the sounds of running water, Phil. Mag. (7) 16, 235-248, 1933; formula as numerical libraries have it',
    seen: 'read',
  },
  OelzeOBrienDarmody2002: {
    title:
      "M. L. Oelze, W. D. O'Brien & R. G. Darmody, Measurement of attenuation and speed of sound in soils, Soil Sci. Soc. Am. J. 66, 788-796, 2002",
    seen: 'abstract',
  },
  Strasberg1953: {
    title: 'M. Strasberg, The pulsation frequency of nonspherical gas bubbles in liquids, JASA 25, 536-537, 1953',
    seen: 'memory',
  },
  Tate1864: {
    title:
      'T. Tate, On the magnitude of a drop of liquid formed under different circumstances, Phil. Mag. 27, 176-180, 1864',
    seen: 'memory',
  },
  vandenDoel2005: {
    title:
      'K. van den Doel, Physically based models for liquid sounds, ACM Trans. Applied Perception 2(4), 534-546, 2005; constants as open synthesisers have them',
    seen: 'read',
  },
  AndroidCDD: {
    title:
      'Android Compatibility Definition, 5.4.7 (voice recognition: 90 dB SPL, RMS 2500) and 5.11 (unprocessed: 94 dB SPL, RMS 520)',
    seen: 'read',
  },
  EBU3285: { title: 'EBU Tech 3285, Specification of the Broadcast Wave Format, version 2.0, 2011', seen: 'memory' },
  EBU3306: {
    title: 'EBU Tech 3306, RF64: an extended file format for audio, as several open writers have it',
    seen: 'read',
  },
  Goertzel1958: {
    title:
      'G. Goertzel, An algorithm for the evaluation of finite trigonometric series, Am. Math. Monthly 65, 34-35, 1958',
    seen: 'memory',
  },
  Kaiser1974: {
    title:
      'J. F. Kaiser, Nonrecursive digital filter design using the I0-sinh window function, Proc. IEEE ISCAS, 20-23, 1974',
    seen: 'memory',
  },
  RIFF1991: {
    title: 'IBM & Microsoft, Multimedia Programming Interface and Data Specifications 1.0, 1991: RIFF, WAVE',
    seen: 'memory',
  },
  RFC2361: { title: 'IETF RFC 2361, WAVE and AVI codec registries, 1998', seen: 'memory' },
  WaveFormatExtensible: {
    title: 'Microsoft, WAVEFORMATEXTENSIBLE structure (mmreg.h): container bits, valid bits, subformat',
    seen: 'memory',
  },
  Antoni2006: {
    title:
      'J. Antoni, The spectral kurtosis: a useful tool for characterising non-stationary signals, Mech. Syst. Signal Process. 20, 282-307, 2006',
    seen: 'memory',
  },
  Harris1978: {
    title:
      'F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66, 51-83, 1978',
    seen: 'memory',
  },
  IEC61260: {
    title:
      'IEC 61260-1:2014, Octave-band and fractional-octave-band filters: mid-bands, edges and class 1 limits as three independent open implementations transcribe them',
    seen: 'read',
  },
  ISO266: { title: 'ISO 266:1997, Acoustics: preferred frequencies', seen: 'memory' },
  Peeters2004: {
    title: 'G. Peeters, A large set of audio features for sound description, CUIDADO report, 2004',
    seen: 'memory',
  },
  WebAudio: {
    title:
      'W3C, Web Audio API: BiquadFilterNode (coefficients after R. Bristow-Johnson; Q of high- and low-pass in dB), WaveShaperNode',
    seen: 'memory',
  },
  Welch1967: {
    title:
      'P. D. Welch, The use of fast Fourier transform for the estimation of power spectra, IEEE Trans. Audio Electroacoust. 15, 70-73, 1967',
    seen: 'memory',
  },
  Bornitz1931: {
    title:
      'G. Bornitz, Über die Ausbreitung der von Großkolbenmaschinen erzeugten Bodenschwingungen in die Tiefe, Springer, 1931 (spreading and absorption of ground waves)',
    seen: 'memory',
  },
  RichartHallWoods1970: {
    title:
      'F. E. Richart, J. R. Hall & R. D. Woods, Vibrations of Soils and Foundations, Prentice-Hall, 1970 (spreading of waves after Bornitz)',
    seen: 'memory',
  },
  KimLee2000: {
    title:
      'D.-S. Kim & J.-S. Lee, Propagation and attenuation characteristics of various ground vibrations, Soil Dyn. Earthq. Eng. 19, 115-126, 2000',
    seen: 'memory',
  },
  CremerHeckl: {
    title: 'L. Cremer & M. Heckl, Structure-borne Sound, Springer (bending waves of plates)',
    seen: 'memory',
  },
  Muggleton2023: {
    title:
      'J. M. Muggleton et al., A simplified model of the ground surface vibration arising from a leaking pipe, 2023, doi 10.1007/978-3-031-15758-5_105',
    seen: 'abstract',
  },
  PinningtonBriscoe1994: {
    title:
      'R. J. Pinnington & A. R. Briscoe, Externally applied sensor for axisymmetric waves in a fluid filled pipe, J. Sound Vib. 173, 503-516, 1994',
    seen: 'memory',
  },
  Berges2015: {
    title:
      'B. J. P. Berges, T. G. Leighton & P. R. White, Passive acoustic quantification of gas fluxes, Int. J. Greenhouse Gas Control 38, 64-79, 2015',
    seen: 'abstract',
  },
  Uyanik2010: {
    title:
      'O. Uyanik, Compressional and shear-wave velocity measurements in unconsolidated top-soil, Int. J. Phys. Sci. 5(7), 1034-1039, 2010',
    seen: 'abstract',
  },
  OppenheimSchafer2010: {
    title: 'A. V. Oppenheim & R. W. Schafer, Discrete-Time Signal Processing, 3rd ed., 2010',
    seen: 'memory',
  },
  Chew1967: {
    title: 'M. C. Chew, A sequential search procedure, Annals of Mathematical Statistics 38(2), 494-502, 1967',
    seen: 'abstract',
  },
  GneitingRaftery2007: {
    title:
      'T. Gneiting & A. E. Raftery, Strictly proper scoring rules, prediction, and estimation, J. Am. Stat. Assoc. 102, 359-378, 2007',
    seen: 'memory',
  },
  Patwari2003: {
    title:
      "N. Patwari, A. O. Hero, M. Perkins, N. S. Correal & R. J. O'Dea, Relative location estimation in wireless sensor networks, IEEE Trans. Signal Process. 51(8), 2137-2148, 2003",
    seen: 'abstract',
  },
  ShinomotoShimaTanji2003: {
    title:
      'S. Shinomoto, K. Shima & J. Tanji, Differences in spiking patterns among cortical neurons, Neural Comput. 15, 2823-2842, 2003',
    seen: 'memory',
  },
  NIOSH98126: {
    title: 'NIOSH, Criteria for a recommended standard: occupational noise exposure, publication 98-126, 1998',
    seen: 'read',
  },
  CFR1926: { title: '29 CFR 1926.652, Requirements for protective systems (excavations)', seen: 'read' },
  ASTMD1785: {
    title: 'ASTM D1785, PVC plastic pipe, Schedules 40, 80 and 120; dimensions as a public page of pipe data has them',
    seen: 'read',
  },
  AWWAC600: {
    title:
      'ANSI/AWWA C600, Installation of ductile-iron mains, testing allowance L = SD√P/148 000; formula as NFPA 13 prints it, worked figure as an engineer published it',
    seen: 'read',
  },
  Moser2001: { title: 'A. P. Moser, Buried Pipe Design, 2nd ed., McGraw-Hill, 2001', seen: 'read' },
  PlasticPipeAir1980: {
    title:
      'Plastic Pipe and Fittings Association, User Bulletin 4-80, against compressed air in PVC and CPVC pressure piping; the PVC pipe association says the same',
    seen: 'read',
  },
  Burridge1981: {
    title:
      'J. Burridge, A note on maximum likelihood estimation for regression models using grouped data, J. R. Stat. Soc. B 43, 41-45, 1981',
    seen: 'memory',
  },
  PressEtAl1992: {
    title: 'W. H. Press et al., Numerical Recipes in C, 2nd ed., section 6.2 (erfcc), 1992',
    seen: 'memory',
  },
  FIPS180: { title: 'NIST FIPS PUB 180-4, Secure Hash Standard, 2015; formulae and constants', seen: 'memory' },
  APPNOTE636: { title: 'PKWARE, .ZIP File Format Specification (APPNOTE) 6.3.6, 2019', seen: 'memory' },
  RFC4648: { title: 'IETF RFC 4648, The Base16, Base32 and Base64 data encodings, 2006', seen: 'memory' },
  RFC6979: {
    title: 'IETF RFC 6979, Deterministic usage of DSA and ECDSA, 2013, appendix A.2.5 (P-256 with SHA-256)',
    seen: 'memory',
  },
  FIPS186: { title: 'NIST FIPS PUB 186-5, Digital Signature Standard, 2023', seen: 'memory' },
  Stone1961: { title: 'M. Stone, The opinion pool, Ann. Math. Stat. 32, 1339-1342, 1961', seen: 'memory' },
  Cohen1960: {
    title:
      'J. Cohen, A coefficient of agreement for nominal scales, Educ. Psychol. Meas. 20, 37-46, 1960; worked tables as encyclopaedias print them',
    seen: 'memory',
  },
  StanislawTodorov1999: {
    title:
      'H. Stanislaw & N. Todorov, Calculation of signal detection theory measures, Behav. Res. Methods 31, 137-149, 1999; formulae as open implementations transcribe them, the worked example from memory',
    seen: 'read',
  },
  Hautus1995: {
    title:
      "M. J. Hautus, Corrections for extreme proportions and their biasing effects on estimated values of d', Behav. Res. Methods 27, 46-51, 1995",
    seen: 'memory',
  },
  GourevitchGalanter1967: {
    title:
      'V. Gourevitch & E. Galanter, A significance test for one parameter isosensitivity functions, Psychometrika 32, 25-33, 1967',
    seen: 'memory',
  },
  KCox2014: {
    title: "K. Cox, dprime_simple.m, 2014: an open function for d' and c with worked values in its help",
    seen: 'read',
  },
  Wilson1927: {
    title:
      'E. B. Wilson, Probable inference, the law of succession, and statistical inference, J. Am. Stat. Assoc. 22, 209-212, 1927',
    seen: 'memory',
  },
  Newcombe1998: {
    title:
      'R. G. Newcombe, Two-sided confidence intervals for the single proportion, Stat. Med. 17, 857-872, 1998, table I',
    seen: 'memory',
  },
  NowakWilson2013: {
    title: 'M. Nowak, wilson-score-interval: an open implementation with worked values in its help',
    seen: 'read',
  },
  Conover1999: {
    title: 'W. J. Conover, Practical Nonparametric Statistics, 3rd ed., section 3.2, 1999',
    seen: 'memory',
  },
  Levitt1971: {
    title: 'H. Levitt, Transformed up-down methods in psychoacoustics, J. Acoust. Soc. Am. 49, 467-477, 1971',
    seen: 'memory',
  },
  Allen1977: {
    title:
      'J. B. Allen, Short term spectral analysis, synthesis, and modification by discrete Fourier transform, IEEE Trans. ASSP 25, 235-238, 1977',
    seen: 'memory',
  },
  KontsevichTyler1999: {
    title:
      'L. L. Kontsevich & C. W. Tyler, Bayesian adaptive estimation of psychometric slope and threshold, Vision Res. 39, 2729-2737, 1999',
    seen: 'memory',
  },
  RFC9639: {
    title: 'M. van Beurden, A. Weaver, Free Lossless Audio Codec (FLAC), IETF RFC 9639, December 2024',
    seen: 'memory',
  },
  RFC8493: {
    title:
      'IETF RFC 8493, The BagIt file packaging format (V1.0), 2018; the rules of sections 2 and 3 as open validators transcribe them',
    seen: 'read',
  },
} as const satisfies Record<string, Source>
