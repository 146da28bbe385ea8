/** Footings under hand-made forces on the fixture's soil, for the tests of this folder. */
import type { Basis, Office } from '../../project/model.js';
import type { SlabPlaced, Structure } from '../../structure/model.js';
import { gableProject } from '../../structure/testing.js';
import { bar, contextFor, joint, NONE, pad, postBar, type v } from '../testing.js';

type V = ReturnType<typeof v>;

export const said = <T>(value: T, from = 'soils report'): Office<T> => ({ value, state: 'given', from, path: '/x' });
const withSoil = (soil: Partial<Basis['soil']>) => ({
  ...gableProject,
  basis: { ...gableProject.basis, soil: { ...gableProject.basis.soil, lateral: said(100), ...soil } },
});
const foot = joint({
  id: 'J2',
  mark: 'J2',
  kind: 'post-to-footing',
  ties: [
    { part: 'P1', along: 0 },
    { part: 'F1', along: 0 },
  ],
});
export const under = (
  force: readonly V[],
  moment: readonly V[] = [NONE, NONE, NONE],
  change: Parameters<typeof pad>[0] = {},
  more: { soil?: Partial<Basis['soil']>; slabs?: readonly SlabPlaced[]; grade?: Structure['grade'] } = {},
) =>
  contextFor({
    project: withSoil(more.soil ?? {}),
    structure: {
      footings: [pad(change)],
      members: [bar(), postBar()],
      joints: [foot],
      slabs: more.slabs ?? [],
      ...(more.grade ? { grade: more.grade } : {}),
    },
    footings: { F1: { force, moment } },
  });

/** A pier 12 in wide with its underside 90 in in the ground. */
export const PIER = {
  round: true,
  size: 12,
  pierDiameter: 12,
  padThickness: 0,
  top: -12,
  bottom: -102,
  bearingArea: Math.PI * 36,
  soilOver: 0,
};
