import type { SignKind } from '../../../shared/job/signs'

/** What a sign is called. */
export const SIGN_WORDS = {
  'wet patch': 'label_sign_wet_patch',
  'sunk paver': 'label_sign_sunk_paver',
  bubbles: 'label_sign_bubbles',
  'bare ear': 'label_sign_bare_ear',
  other: 'label_sign_other',
} as const satisfies Record<SignKind, string>
