/** Roof live load and balanced snow: uniform on the horizontal projection, roof by roof. */
import type { Project } from '../project/model.js';
import type { RoofPlaced, Structure } from '../structure/model.js';
import { type Ledger, note } from './basis.js';
import {
  asce,
  degrees,
  exposureCe,
  flatRoofSnow,
  isOutOfScope,
  LO_ORDINARY_ROOF,
  minimumRoofSnow,
  type RoofExposure,
  rainOnSnow,
  roofLiveLoad,
  SNOW_IMPORTANCE,
  slopeCs,
  slopedRoofSnow,
  thermalCt,
} from './codes/asce7/index.js';
import { PATIO_COVER_LIVE_LOAD } from './codes/irc-2018/index.js';
import type { AreaLoad, LoadCase, LoadKind, PlanLoad } from './model.js';
import { appendixApplies } from './patio-appendix.js';

/** What the other ways of lying start from: the balanced snow of each roof without rain or minimum, and its factors. */
export interface BalancedSnow {
  readonly balanced: LoadCase | undefined;
  readonly pg: number;
  readonly Ce: number;
  readonly Is: number;
  /** ps by roof, psf on plan. */
  readonly ps: ReadonlyMap<string, number>;
}

/** A uniform case on plan from one number for each roof; undefined when all are zero. */
function planCase(
  structure: Structure,
  psfOf: ReadonlyMap<string, number>,
  kind: LoadKind,
  title: string,
  clause: string,
): LoadCase | undefined {
  const areas: AreaLoad[] = [];
  const plan: PlanLoad[] = [];
  for (const surface of structure.surfaces) {
    const psf = psfOf.get(surface.roof) ?? 0;
    if (psf > 0) areas.push({ surface: surface.id, psf, acts: 'plan' });
  }
  for (const [roof, psf] of psfOf) if (psf > 0) plan.push({ roof, psf, acts: 'plan' });
  if (areas.length === 0) return undefined;
  return { id: kind, kind, title, areas, edges: [], plan, selfWeight: false, side: [], clause };
}

/** Largest plan area one framing member of a roof carries, in²: the tributary area used for the live load reduction. */
function framingArea(structure: Structure, roof: RoofPlaced): number {
  let largest = 0;
  for (const member of structure.members) {
    if (member.roof !== roof.mark || member.strips.length === 0) continue;
    let area = 0;
    for (const strip of member.strips) {
      const surface = structure.surfaces.find((s) => s.id === strip.surface);
      if (!surface) continue;
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (const p of surface.outline) {
        low = Math.min(low, p.y);
        high = Math.max(high, p.y);
      }
      area += Math.max(0, strip.share ?? 1) * (strip.u1 - strip.u0) * (high - low) * Math.cos(surface.slope);
    }
    largest = Math.max(largest, area);
  }
  return largest;
}

/**
 * Roof live load case. The jurisdiction's minimum always holds; the standard's 20 psf (10 psf where the patio cover
 * appendix applies) may be reduced only where the project says so. One value serves the whole roof: the
 * reduction for area is taken at a framing member's area, so beams and footings gain nothing from theirs.
 */
export function liveCase(project: Project, structure: Structure, ledger: Ledger): LoadCase | undefined {
  const edition = project.basis.codes.loads;
  const { minimum, patioAppendix, reduce } = project.basis.roofLive;
  const appendix = appendixApplies(project, structure);
  const base = appendix ? PATIO_COVER_LIVE_LOAD : LO_ORDINARY_ROOF;
  const baseClause = appendix ? 'IRC 2018 Appendix H AH105.1' : asce(edition, 'Table 4.3-1');
  note(ledger, 'Lo', 'roof live load before reduction', base, 'psf', baseClause, [patioAppendix.path, '/cover/use']);
  note(
    ledger,
    'Lmin',
    'least roof live load of the jurisdiction',
    minimum.value,
    'psf',
    minimum.from || 'jurisdiction',
    [minimum.path],
  );
  const psfOf = new Map<string, number>();
  for (const roof of structure.roofs) {
    const At = framingArea(structure, roof);
    const reduced = reduce ? roofLiveLoad(base, At, 12 * Math.tan(roof.slope), edition) : base;
    const Lr = Math.max(reduced, minimum.value);
    psfOf.set(roof.mark, Lr);
    const how = reduce ? ', reduction allowed' : '';
    const clause = Lr > reduced ? minimum.from || 'jurisdiction' : reduce ? asce(edition, '4.8.2') : baseClause;
    note(
      ledger,
      'Lr',
      `${roof.mark}: roof live load on plan${how}`,
      Lr,
      'psf',
      clause,
      [minimum.path, roof.path],
      reduce ? 'memory' : 'read',
    );
  }
  return planCase(structure, psfOf, 'Lr', 'Roof live load', baseClause);
}

const EXPOSURE: Readonly<Record<Project['basis']['snow']['exposure']['value'], RoofExposure>> = {
  fully: 'fully-exposed',
  partially: 'partially-exposed',
  sheltered: 'sheltered',
};

/**
 * Balanced snow: the larger of ps = Cs·pf with rain on snow, and the minimum of a low slope. None where the ground snow
 * load is zero. Unbalanced, drift and sliding snow are cases of their own (snow/).
 */
export function snowCase(project: Project, structure: Structure, ledger: Ledger): BalancedSnow | undefined {
  const { basis } = project;
  const edition = basis.codes.loads;
  const pg = basis.snow.ground.value;
  const paths = [basis.snow.ground.path];
  note(ledger, 'pg', 'ground snow load', pg, 'psf', basis.snow.ground.from || asce(edition, '7.2'), paths);
  if (!(pg > 0)) return undefined;
  const exposurePaths = [basis.snow.exposure.path, basis.wind.exposure.path];
  const Ce = exposureCe(basis.wind.exposure.value, EXPOSURE[basis.snow.exposure.value], edition);
  const Ct = thermalCt('unheated-or-open', edition, undefined);
  if (isOutOfScope(Ce) || isOutOfScope(Ct)) {
    ledger.outside.push({
      about: 'roof snow load',
      why: isOutOfScope(Ce) ? Ce.reason : (Ct as { reason: string }).reason,
    });
    return undefined;
  }
  const Is = SNOW_IMPORTANCE[basis.riskCategory];
  const pf = flatRoofSnow(pg, Ce, Ct, Is, edition);
  note(ledger, 'Ce', 'snow exposure factor', Ce, '', asce(edition, 'Table 7.3-1'), exposurePaths);
  note(ledger, 'Ct', 'thermal factor, open below', Ct, '', asce(edition, 'Table 7.3-2'), []);
  note(ledger, 'Is', 'importance factor for snow', Is, '', asce(edition, 'Table 1.5-2'), ['/basis/riskCategory']);
  note(ledger, 'pf', 'flat roof snow load', pf, 'psf', asce(edition, 'Eq. 7.3-1'), [...paths, ...exposurePaths]);
  const psfOf = new Map<string, number>();
  const psOf = new Map<string, number>();
  for (const roof of structure.roofs) {
    const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark);
    // One slippery rule for the roof: all its planes must be slippery before snow may be taken as sliding off.
    const slippery = surfaces.every((s) => s.slippery) && surfaces.length > 0;
    const across = roof.ridgeAxis === 'x' ? roof.max.y - roof.min.y : roof.max.x - roof.min.x;
    const W = across / Math.max(1, surfaces.length);
    const Cs = slopeCs(roof.slope, Ct, slippery, false, edition);
    const ps = slopedRoofSnow(pf, Cs, edition);
    const rain = rainOnSnow(pg, basis.riskCategory, roof.slope, W, edition);
    const pm = minimumRoofSnow(pg, basis.riskCategory, roof.slope, edition);
    const S = Math.max(ps + rain, pm);
    psfOf.set(roof.mark, S);
    psOf.set(roof.mark, ps);
    const from = [...paths, roof.path];
    const surface = `${slippery ? 'slippery' : 'not slippery'}, ${degrees(roof.slope).toFixed(1)}°`;
    note(ledger, 'Cs', `${roof.mark}: slope factor, ${surface}`, Cs, '', asce(edition, 'Fig. 7.4-1'), [roof.path]);
    note(ledger, 'ps', `${roof.mark}: balanced snow on plan`, ps, 'psf', asce(edition, 'Eq. 7.4-1'), from);
    if (rain > 0) note(ledger, 'pros', `${roof.mark}: rain on snow`, rain, 'psf', asce(edition, '7.10'), from);
    if (pm > 0)
      note(ledger, 'pm', `${roof.mark}: least snow load of a low slope`, pm, 'psf', asce(edition, '7.3.4'), from);
    note(ledger, 'S', `${roof.mark}: balanced snow used, on plan`, S, 'psf', asce(edition, '7.3, 7.4, 7.10'), from);
  }
  const balanced = planCase(structure, psfOf, 'S', 'Balanced snow', asce(edition, 'Eq. 7.4-1'));
  return { balanced, pg, Ce, Is, ps: psOf };
}
