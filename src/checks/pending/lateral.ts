/** Earthquake, the connection to the house, and the truss plant's papers. */
import { pendingCheck } from './pending.js';

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

export const houseConnection = pendingCheck({
  id: 'house-connection',
  title: 'Connection to the house',
  clause: 'NDS 2018 chapter 12',
  reason: 'What fastens the cover to the house, and whether the house can take it, is not worked out yet.',
  needs: 'fasteners, what they go into, flashing, and the house’s own load path',
  unless(ctx) {
    const { cover } = ctx.project;
    const leans = cover.ledgers.length > 0 || cover.lateral.x === 'house' || cover.lateral.y === 'house';
    return leans ? undefined : 'the cover hands no load to the house';
  },
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
