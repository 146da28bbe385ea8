/** How sheathing is nailed, in words, for the plans. */
import { findFastener } from '../../catalog/index.js';
import type { Nailing, Project } from '../../project/model.js';
import type { SheetContext } from './contract.js';

/** How each roof's sheathing is nailed, or that it is still to be said; roofs nailed alike share a note. */
export function nailingNotes(project: Project, len: SheetContext['len']): string[] {
  const marks = new Map<string, string[]>();
  for (const { mark, finish } of project.cover.roofs) {
    if (finish.sheathing === '') continue;
    const n = finish.nailing;
    const how = n
      ? `${findFastener(n.nail)?.name ?? n.nail} at ${len(n.edge)} on panel ends and edges and ${len(n.field)} elsewhere into every frame${diaphragmText(n, len)}`
      : 'open, to be named before it is built';
    marks.set(how, [...(marks.get(how) ?? []), mark]);
  }
  return [...marks].map(([how, of]) => `Sheathing nails, ${of.join(' and ')}: ${how}.`);
}

/** What makes the sheathing carry side load: boundary nails, blocked edges, blocks over the bearings. */
function diaphragmText(n: Nailing, len: SheetContext['len']): string {
  const boundary = `, ${len(n.boundary ?? n.edge)} along all outer edges, ridge and hips into blocking`;
  const blocked = n.blocked ? ', all panel edges blocked' : ', panel edges between frames unblocked';
  const heel = n.heel
    ? `; a block in every bay over each beam, ${n.heel.count} toe-nails ${findFastener(n.heel.nail)?.name ?? n.heel.nail}`
    : '';
  return `${boundary}${blocked}${heel}`;
}
