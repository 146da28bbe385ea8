import type { BeamEnd, BeamLine, Header, LedgerFastening, PostFoot } from '../model.js';
import type { WrittenEnd, WrittenFastening, WrittenHeader } from '../schema/attachment.js';
import type { Notebook } from './notebook.js';

const NO = { value: false, shown: 'not verified' };

function foot(w: Extract<WrittenEnd, { kind: 'post-in-wall' }>, path: string, note: Notebook): PostFoot {
  if (w.foot.kind === 'footing') return w.foot;
  return {
    ...w.foot,
    verified: note.office(w.foot.verified, `${path}/foot/verified`, {
      ...NO,
      question: `Can the foundation of the house under post ${w.mark} take the load shown at the house?`,
    }),
  };
}

function beamEnd(w: WrittenEnd, mark: string, path: string, wallNames: readonly string[], note: Notebook): BeamEnd {
  const wall = wallNames.indexOf(w.wall);
  const verified = note.office(w.verified, `${path}/verified`, {
    ...NO,
    question: `Has the wall framing been seen where beam ${mark} meets the wall "${w.wall}"?`,
  });
  return w.kind === 'on-wall'
    ? { ...w, wall, verified, path }
    : { ...w, wall, verified, foot: foot(w, path, note), path };
}

export function completeEnds(
  w: { readonly start?: WrittenEnd | undefined; readonly end?: WrittenEnd | undefined } | undefined,
  mark: string,
  path: string,
  wallNames: readonly string[],
  note: Notebook,
): Pick<BeamLine, 'ends'> {
  if (!w) return {};
  const at = (key: 'start' | 'end') => {
    const written = w[key];
    return written ? { [key]: beamEnd(written, mark, `${path}/ends/${key}`, wallNames, note) } : {};
  };
  return { ends: { ...at('start'), ...at('end') } };
}

export function completeFastening(
  w: WrittenFastening | undefined,
  mark: string,
  path: string,
  note: Notebook,
): { readonly fastening?: LedgerFastening } {
  if (!w) return {};
  const at = `${path}/fastening`;
  return {
    fastening: {
      ...w,
      standoff: w.standoff ?? 0,
      basis: w.basis ?? '',
      framing: { ...w.framing, bottom: w.framing.bottom, top: w.framing.top },
      verified: note.office(w.verified, `${at}/verified`, {
        ...NO,
        question: `Has the framing behind ledger ${mark} been seen along its whole length?`,
      }),
      path: at,
    },
  };
}

export function completeHeader(
  w: WrittenHeader | undefined,
  mark: string,
  path: string,
  note: Notebook,
): { readonly header?: Header } {
  if (!w) return {};
  const at = `${path}/header`;
  return {
    header: {
      ...(w.made ? { made: w.made } : {}),
      verified: note.office(w.verified, `${at}/verified`, {
        ...NO,
        question: `Can the header and jack studs of ${mark} take the load the cover adds?`,
      }),
      path: at,
    },
  };
}
