/** What keeps the cover from swaying, and what it hands to the house. */
import type { LateralSystem } from '../../project/model.js';
import type { Check } from '../contract.js';
import { failed, notEvaluated } from '../finding.js';
import { pendingCheck, roofSubjects } from './pending.js';

const SYSTEM: Readonly<Record<LateralSystem, string>> = {
  house: 'the house',
  'knee-braces': 'knee braces',
  'fixed-posts': 'posts fixed at their feet',
  none: 'nothing',
  unknown: 'something not chosen yet',
};

const SWAY_CLAUSE = 'ASCE 7-16 1.4.3';

const sway = (axis: 'x' | 'y', along: string): Check =>
  pendingCheck({
    id: `sway-${axis}`,
    title: `Sway ${along}`,
    clause: SWAY_CLAUSE,
    reason: (ctx) =>
      `Side load ${along} is to be held by ${SYSTEM[ctx.project.cover.lateral[axis]]}; that path is not worked out yet.`,
    needs: 'the roof diaphragm, the resisting system, its joints and its footings',
    wrong: (ctx) =>
      ctx.project.cover.lateral[axis] === 'none'
        ? failed(SWAY_CLAUSE, `Nothing resists side load ${along}: name the house, knee braces or fixed posts.`)
        : undefined,
  });

export const swayX = sway('x', 'along the house wall');
export const swayY = sway('y', 'square to the house wall');

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
