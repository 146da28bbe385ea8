/** What a connector at the end of a beam holds on to in the existing house, as the project file states it. */
import { findSpecies } from '../../catalog/index.js';
import type { BeamEnd, JointProduct } from '../../project/model.js';
import type { Joint } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';

export interface Misfit {
  readonly status: Finding['status'];
  readonly note: string;
}

/** The stated beam end a joint at the house belongs to; undefined for ledgers, which have a check of their own. */
export function endOf({ project }: Pick<CheckContext, 'project'>, joint: Joint): BeamEnd | undefined {
  return project.cover.beams
    .flatMap((b) => [b.ends?.start, b.ends?.end])
    .find((e) => e !== undefined && e.path === joint.path);
}

const open = (note: string): Misfit => ({ status: 'not-evaluated', note });
const outside = (note: string): Misfit => ({ status: 'outside-scope', note });

/** What keeps a table from applying to the house's side of a joint; undefined when it applies there. */
export function houseMisfit(ctx: CheckContext, joint: Joint, part: string, product: JointProduct): Misfit | undefined {
  const end = endOf(ctx, joint);
  if (end?.kind === 'on-wall') return inFraming(end, part, product);
  if (end?.kind === 'post-in-wall' && end.foot.kind === 'foundation') return onFoundation(end.mark, end.foot, product);
  return open(
    `${part} is existing construction whose wood is not in the file; what the product holds in it is to be confirmed.`,
  );
}

function inFraming(
  end: Extract<BeamEnd, { kind: 'on-wall' }>,
  part: string,
  product: JointProduct,
): Misfit | undefined {
  if (end.species === undefined)
    return open(
      `${part} is existing construction whose wood is not in the file: read the stamp of the framing behind the connector and enter its "species".`,
    );
  const G = findSpecies(end.species)?.G;
  if (G === undefined) return open(`The catalogue has no specific gravity of ${end.species}.`);
  if (G < product.G - 1e-9)
    return outside(
      `The published loads are for wood of specific gravity ${product.G} (${product.species}); the framing of ${part} is ${end.species} with ${G}: take the column for that wood.`,
    );
  return undefined;
}

function onFoundation(
  mark: string,
  foot: Extract<Extract<BeamEnd, { kind: 'post-in-wall' }>['foot'], { kind: 'foundation' }>,
  product: JointProduct,
): Misfit | undefined {
  if (foot.fc === undefined)
    return open(
      `${mark} stands on the foundation of the house, and the strength of its concrete is not in the file: enter "fc" as the office accepts it.`,
    );
  if (product.concrete === undefined)
    return open('This joint stands on concrete; enter under "concrete" the strength the published loads are for.');
  if (foot.fc < product.concrete - 0.5)
    return outside(
      `The published loads are for concrete of ${Math.round(product.concrete)} psi; the foundation under ${mark} has ${Math.round(foot.fc)} psi.`,
    );
  return undefined;
}
