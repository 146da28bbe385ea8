/** What keeps the cover from swaying. */
import { notEvaluated } from '../finding.js';
import { pendingCheck, roofSubjects } from './pending.js';

export const diaphragm = pendingCheck({
  id: 'diaphragm',
  title: 'Roof as a diaphragm',
  clause: 'SDPWS 2015 4.2',
  reason: 'Whether the roof can carry side load to what resists it is not worked out yet.',
  needs: 'the sheathing’s nailing, its unit shear and the chords',
  subjects: roofSubjects,
  wrong(ctx, subject) {
    const bare = ctx.structure.surfaces.some((s) => s.roof === subject.id && !s.sheathed);
    if (!bare) return undefined;
    return notEvaluated(
      'SDPWS 2015 4.2',
      'This roof has no sheathing and is no diaphragm; another way to carry side load must be shown. Needed: bracing in the roof plane.',
    );
  },
});

export const seismic = pendingCheck({
  id: 'seismic',
  title: 'Earthquake',
  clause: 'ASCE 7-16 11.1.2',
  reason: 'Earthquake forces in this seismic design category are not worked out yet.',
  needs: 'base shear, its path to the soil, and the ties it asks for',
  unless: (ctx) =>
    'ABC'.includes(ctx.project.basis.seismic.category.value)
      ? `detached one- and two-family dwellings are exempt in category ${ctx.project.basis.seismic.category.value}`
      : undefined,
});

export const trussPapers = pendingCheck({
  id: 'truss-papers',
  title: 'Sealed truss design',
  clause: 'IRC 2018 R802.10',
  reason: 'Trusses are designed and sealed by the truss plant’s engineer; his sheets are not entered yet.',
  needs: 'the sealed truss drawings, their reactions, uplift and bracing, compared with this set',
  subjects: (ctx) =>
    ctx.project.cover.roofs
      .filter((r) => ctx.structure.members.some((m) => m.roof === r.mark && m.truss !== undefined))
      .map((r) => ({ id: r.mark, path: `${r.path}/framing` })),
});
