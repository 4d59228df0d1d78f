import type { SitePhoto } from '../../../../shared/job/site'
import type { Action } from '../action'
import { withSite } from '../changes'

/** Lays a photo under the sketch, or takes it away. */
export const putPhoto: Action<{ readonly lineId: string; readonly photo: SitePhoto | null }> = {
  name: 'putPhoto',
  words: 'do_put_photo',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, photo }) => withSite(state, lineId, { photo }),
}
