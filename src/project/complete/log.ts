import type { Log } from '../model.js';
import type { Written } from '../schema/index.js';

type WrittenLog = Written['log'];

const inspections = (w: NonNullable<WrittenLog['inspections']>): Log['inspections'] =>
  w.map((v, i) => ({
    stage: v.stage,
    date: v.date,
    result: v.result,
    by: v.by ?? '',
    note: v.note ?? '',
    items: (v.items ?? []).map((t) => ({
      item: t.item,
      done: t.done,
      measured: t.measured ?? '',
      note: t.note ?? '',
      photo: t.photo ?? '',
    })),
    path: `/log/inspections/${i}`,
  }));

const asBuilt = (w: NonNullable<WrittenLog['asBuilt']>): Log['asBuilt'] => ({
  readings: w.readings.map((r, i) => ({ ...r, path: `/log/asBuilt/readings/${i}` })),
  slot: w.slot,
  cut: (w.cut ?? []).map((c, i) => ({ ...c, path: `/log/asBuilt/cut/${i}` })),
});

/** What the file does not say of the site stays absent: nothing was measured, nobody has inspected. */
export const completeLog = (w: WrittenLog): Log => ({
  revisions: w.revisions ?? [],
  approvals: w.approvals ?? [],
  ...(w.inspections ? { inspections: inspections(w.inspections) } : {}),
  ...(w.asBuilt ? { asBuilt: asBuilt(w.asBuilt) } : {}),
});
