import type { AssociationPacket, Submittal } from '../model/submittal.js';
import type { WrittenSubmittal } from '../schema/submittal.js';

const association = (w: NonNullable<WrittenSubmittal['association']>): AssociationPacket => ({
  name: w.name,
  finishes: (w.finishes ?? []).map((f) => ({ ...f, sample: f.sample ?? '' })),
  schedule: (w.schedule ?? []).map((s) => ({ ...s, note: s.note ?? '' })),
  storage: w.storage ?? '',
  drainage: w.drainage ?? '',
  neighbors: (w.neighbors ?? []).map((n) => ({ name: n.name, side: n.side ?? '' })),
});

/** Left out, the office asks what most ask, nothing has come back, and there is no association. */
export const completeSubmittal = (w: WrittenSubmittal = {}): Submittal => ({
  officeChecklist: {
    office: w.officeChecklist?.office ?? '',
    remove: w.officeChecklist?.remove ?? [],
    add: (w.officeChecklist?.add ?? []).map((a, i) => ({ ...a, path: `/submittal/officeChecklist/add/${i}` })),
  },
  comments: (w.comments ?? []).map((c, i) => ({
    number: c.number,
    from: c.from ?? '',
    date: c.date ?? '',
    text: c.text,
    answer: c.answer,
    sheet: c.sheet ?? '',
    place: c.place ?? '',
    path: `/submittal/comments/${i}`,
  })),
  ...(w.association ? { association: association(w.association) } : {}),
});

export const NO_SUBMITTAL: Submittal = completeSubmittal();
