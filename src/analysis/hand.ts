/**
 * Hand statics beside the frame, for the gravity cases: the load of a beam taken as even, each post carrying its
 * tributary length (of two posts, by the lever), each footing its post's weight more, each span w·L²/8 (on two bearings,
 * the framing's own forces by the lever). Where the frame shows less by over 5 % and nothing explains it, statics governs.
 */
import type { Loads } from '../loads/model.js';
import type { Member } from '../structure/model.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import { tributaryWidths } from './ledger.js';
import type { FootingForces, HandCheck, MemberEffects } from './model.js';
import type { Rows } from './rows.js';
import { beamCurves, bearingForces } from './two-bearings.js';

const SHORTFALL = 0.95;
/** A hip this near a bearing of the beam, inches, stands on that bearing and is no even load. */
const OVER_POST = 6;

const judge = (
  about: string,
  c: string,
  statics: number,
  analysed: number,
  unit: string,
  reason: string,
): HandCheck => {
  const short = analysed < SHORTFALL * statics;
  const named = short ? reason : '';
  return {
    about,
    case: c,
    statics,
    analysed,
    unit,
    reason: named,
    governs: short && named === '' ? 'statics' : 'analysed',
  };
};

/** Greatest sagging moment of a beam on two bearings by plain statics of its framing's forces. */
function twoBearingMoment(
  index: StructureIndex,
  beam: Member,
  effects: MemberEffects,
  joints: ReadonlyMap<string, Rows>,
  at: readonly number[],
  k: number,
  heavy: boolean,
): number {
  const last = effects.stations.length - 1;
  const length = effects.stations[last]!;
  const w = heavy ? beam.section.weight : 0;
  const lines = [{ a: 0, b: length, qa: w, qb: w }];
  const points = (index.above.get(beam.id) ?? []).map((b) => ({
    at: b.lowerAlong,
    p: -(joints.get(b.joint.id)?.[3 * k + 2] ?? 0),
  }));
  const two = { length, first: at[0]!, second: at[1]!, EI: 1 };
  const x = Float64Array.from([
    at[0]!,
    ...points.map((p) => p.at).filter((p) => p > at[0]! && p < at[1]!),
    (at[0]! + at[1]!) / 2,
  ]);
  const stations = { x, side: new Int8Array(x.length).fill(-1), spanOf: new Int32Array(x.length) };
  const { m } = beamCurves(two, lines, points, bearingForces(two, lines, points), stations);
  return m.reduce((most, v) => Math.max(most, v), 0);
}

/** Length of an even load each of two bearings carries by the lever, overhangs counted. */
const twoBearingWidths = (first: number, second: number, length: number): readonly number[] => {
  const onSecond = (length * (length / 2 - first)) / (second - first);
  return [length - onSecond, onSecond];
};

/** Names the inner bearings that a beam runs on over, from the `first` to the `last` of its bearings. */
function continuity(held: readonly Bearing[], first: number, last: number): string {
  const over = held.slice(Math.max(1, first), Math.min(held.length - 1, last + 1)).map((b) => b.lower);
  return over.length > 0 ? `continuity over ${over.join(', ')}` : '';
}

/** Greatest sagging moment of each span, hogging of each overhang, under one case. */
function greatest(effects: MemberEffects, k: number): Float64Array {
  const out = new Float64Array(effects.spans.length);
  const m = effects.m[k]!;
  for (let i = 0; i < m.length; i++) {
    const s = effects.spanOf[i]!;
    out[s] = Math.max(out[s]!, effects.spans[s]!.kind === 'span' ? m[i]! : -m[i]!);
  }
  return out;
}

export function handChecks(
  index: StructureIndex,
  loads: Loads,
  members: ReadonlyMap<string, MemberEffects>,
  joints: ReadonlyMap<string, Rows>,
  footings: ReadonlyMap<string, FootingForces>,
): readonly HandCheck[] {
  const out: HandCheck[] = [];
  const braced = new Set(
    index.structure.joints.flatMap((j) => (j.kind === 'brace-to-beam' ? j.ties.map((t) => t.part) : [])),
  );
  for (const beam of index.structure.members) {
    const effects = members.get(beam.id);
    if (beam.role !== 'beam' || !effects) continue;
    const length = Math.hypot(beam.end.x - beam.start.x, beam.end.y - beam.start.y);
    const held = (index.below.get(beam.id) ?? []).filter((b) => joints.has(b.joint.id));
    if (held.length === 0) continue;
    const at = held.map((b) => b.upperAlong);
    const widths = at.length === 2 ? twoBearingWidths(at[0]!, at[1]!, length) : tributaryWidths(at, length);
    const over = (i: number, j: number): string =>
      [continuity(held, i, j), braced.has(beam.id) ? 'knee braces carry part of it' : '']
        .filter((s) => s !== '')
        .join('; ');
    const reasons = held.map((_, i) => over(i - 1, i + 1));
    loads.cases.forEach((c, k) => {
      if (c.kind === 'W' || c.kind === 'E' || c.unevenAlong) return;
      let down = c.selfWeight ? beam.section.weight * length : 0;
      const direct = held.map(() => 0);
      for (const b of index.above.get(beam.id) ?? []) {
        const force = -(joints.get(b.joint.id)?.[3 * k + 2] ?? 0);
        const under = b.joint.kind === 'hip-to-beam' ? at.findIndex((x) => Math.abs(x - b.lowerAlong) < OVER_POST) : -1;
        if (under < 0) down += force;
        else direct[under] = direct[under]! + force;
      }
      const w = down / length;
      held.forEach((b, i) => {
        const reason = reasons[i]!;
        const analysed = -joints.get(b.joint.id)![3 * k + 2]!;
        const statics = w * widths[i]! + direct[i]!;
        out.push(judge(`${beam.id} on ${b.lower}`, c.id, statics, analysed, 'lb', reason));
        const post = index.members.get(b.lower);
        const foot = post && index.below.get(post.id)?.find((f) => footings.has(f.lower));
        if (!post || !foot || (index.above.get(post.id)?.length ?? 0) > 1) return;
        const own = c.selfWeight
          ? post.section.weight *
            Math.hypot(post.end.x - post.start.x, post.end.y - post.start.y, post.end.z - post.start.z)
          : 0;
        out.push(
          judge(
            `${foot.lower} under ${post.id}`,
            c.id,
            statics + own,
            footings.get(foot.lower)!.force[k]!.z,
            'lb',
            // A brace brings its share down the same post.
            continuity(held, i - 1, i + 1),
          ),
        );
      });
      const exact = at.length === 2 ? twoBearingMoment(index, beam, effects, joints, at, k, c.selfWeight) : undefined;
      const most = greatest(effects, k);
      // A span lies between two neighbouring bearings; a leading overhang shifts the count.
      const lead = effects.spans[0]?.kind === 'overhang' ? 1 : 0;
      effects.spans.forEach((span, s) => {
        const isSpan = span.kind === 'span';
        const statics = isSpan && exact !== undefined ? exact : (w * span.length ** 2) / (isSpan ? 8 : 2);
        const why = isSpan ? over(s - lead, s - lead + 1) : 'the framing stands nearer the bearing than a spread load';
        const about = `${beam.id} moment, ${span.kind} at ${(span.from / 12).toFixed(2)} ft`;
        out.push(judge(about, c.id, statics, most[s]!, 'lb·in', why));
      });
    });
  }
  return out;
}
