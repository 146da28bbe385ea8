/**
 * Rakes on outlookers: short members from the next frame in, over the end frame, to a barge board at the roof's edge. Their
 * upper sides lie in the plane of the framing's top edges; the end frame is lower by their thickness (a shallower end rafter,
 * a gable truss with a dropped top chord). Each carries the overhang over an even part of the slope.
 */
import type { Vec3 } from '../../base/vec.js';
import type { CoverRoof, RakeFraming } from '../../project/model.js';
import { toHouse } from '../axes.js';
import { error } from '../issues.js';
import type { Kit } from '../kit.js';
import type { Member, Section } from '../model.js';
import type { Profile } from '../roofs/contract.js';
import { degrees, inches, serial } from '../text.js';
import type { Framed, FrameNumbers, Seat } from './contract.js';

interface End {
  readonly station: number;
  readonly next: number;
  /** Roof edge, end frame and next frame along the ridge. */
  readonly edge: number;
  readonly frame: number;
  readonly back: number;
}

const endsOf = ({ stations, extent }: Profile): End[] => {
  const last = stations.length - 1;
  return [
    { station: 0, next: 1, edge: extent[0], frame: stations[0]!, back: stations[1]! },
    { station: last, next: last - 1, edge: extent[1], frame: stations[last]!, back: stations[last - 1]! },
  ];
};

function allowed(
  roof: CoverRoof,
  rake: RakeFraming,
  profile: Profile,
  look: Section,
  barge: Section,
  kit: Kit,
): boolean {
  const at = `${roof.path}/rakeFraming`;
  const refuse = (code: string, path: string, message: string, found: string, expected: string): boolean => {
    kit.issues.push(error(code, path, message, { subject: roof.mark, found, expected }));
    return false;
  };
  for (const [s, key] of [
    [look, 'section'],
    [barge, 'barge'],
  ] as const)
    if (s.family !== 'sawn-dimension' || s.plies > 1)
      return refuse(
        'rake-section',
        `${at}/${key}`,
        'Outlookers and barge boards are single pieces of dimension lumber.',
        s.label,
        'for example 2x4',
      );
  if (rake.lay === 'edge' && look.nominal.width > 2 * look.nominal.thickness)
    return refuse(
      'rake-section',
      `${at}/section`,
      'On edge an outlooker is no deeper than twice its thickness, so that it needs nothing to keep it from rolling (NDS 2018 4.4.1.2).',
      look.label,
      '2x4, or lay it flat',
    );
  if (roof.framing.kind === 'rafter' && roof.framing.ties)
    return refuse(
      'rake-with-ties',
      at,
      'Outlookers over tied pairs of rafters are not worked out by this program.',
      'ties',
      'a "ridgeBeam", trusses, or a rake of a foot at most without outlookers',
    );
  if (roof.framing.kind !== 'rafter' && rake.endFrame !== undefined)
    return refuse(
      'rake-end-frame',
      `${at}/endFrame`,
      'A gable truss is dropped by the truss plant; no section is named for it.',
      rake.endFrame,
      'no "endFrame"',
    );
  const bay = Math.min(...endsOf(profile).map((e) => Math.abs(e.back - e.frame)));
  if (roof.rake > bay)
    return refuse(
      'rake-too-long',
      `${roof.path}/rake`,
      'An outlooker reaches back at least as far as it reaches out (common practice, no source).',
      inches(roof.rake),
      `at most ${inches(bay)}, the bay behind the end frame`,
    );
  if (roof.rake <= barge.b)
    return refuse(
      'rake-too-short',
      `${roof.path}/rake`,
      'The overhang is no wider than its barge board.',
      inches(roof.rake),
      `more than ${inches(barge.b)}, or no "rakeFraming"`,
    );
  return true;
}

/** The framed roof with its rakes; unchanged without `rakeFraming`. Undefined when they cannot be built so. */
export function placeRake(
  roof: CoverRoof,
  profile: Profile,
  framed: Framed,
  number: FrameNumbers,
  kit: Kit,
): Framed | undefined {
  const rake = roof.rakeFraming;
  if (rake === undefined) return framed;
  const path = `${roof.path}/rakeFraming`;
  const look = kit.section(rake.section, `${path}/section`);
  const barge = kit.section(rake.barge, `${path}/barge`);
  if (!look || !barge || !allowed(roof, rake, profile, look, barge, kit)) return undefined;

  const [tan, cos, sin] = [Math.tan(roof.pitch), Math.cos(roof.pitch), Math.sin(roof.pitch)];
  const [mark, bargeMark] = [`OL${number('OL')}`, `BG${number('BG')}`];
  const members: Member[] = [];
  const boards: Member[] = [];
  const seats: Seat[] = [];
  const hung = new Map<string, number>();
  const hang = (m: Member, weight: number): void => void hung.set(m.id, (hung.get(m.id) ?? 0) + weight);
  const thick = rake.lay === 'flat' ? look.b : look.d;
  const common = {
    state: 'new',
    strips: [],
    roof: roof.mark,
    notch: 0,
    unbraced: { top: 0, bottom: 0 },
    path,
  } as const;

  for (const [k, leg] of profile.legs.entries()) {
    const s = leg.top > leg.eave ? 1 : -1;
    const slope = Math.abs(leg.top - leg.eave) / cos;
    const count = Math.ceil(slope / rake.spacing - 1e-9);
    const each = slope / count;
    const normal: Vec3 = toHouse(profile.axes, -s * sin, 0, cos);
    const uphill: Vec3 = toHouse(profile.axes, s * cos, 0, sin);
    /** Point `deep` under the plane of the top edges, square to it, `v` up the slope. */
    const at = (v: number, l: number, deep: number): Vec3 => {
      const p = toHouse(profile.axes, leg.eave + s * v * cos, l, framed.eaves[k]! + v * sin);
      return { x: p.x - deep * normal.x, y: p.y - deep * normal.y, z: p.z - deep * normal.z };
    };
    for (const e of endsOf(profile)) {
      const out = Math.sign(e.edge - e.frame);
      const back = Math.abs(e.back - e.frame);
      const [end, next] = [framed.tails[k]![e.station]!, framed.tails[k]![e.next]!];
      const tip = e.edge - out * barge.b;
      // u runs against the ridge axis where the slope rises with `a` (surfaces.ts).
      const u = (l: number): number => (s > 0 ? profile.extent[1] - l : l - profile.extent[0]);
      const long = Math.abs(tip - e.back);
      for (let i = 0; i < count; i++) {
        const v = (i + 0.5) * each;
        const id = `${mark}-${serial(members.length + 1)}`;
        members.push({
          ...common,
          id,
          mark,
          role: 'outlooker',
          section: look,
          start: at(v, e.back, thick / 2),
          end: at(v, tip, thick / 2),
          up: rake.lay === 'flat' ? uphill : normal,
          length: long - next.section.b / 2,
          cuts: [`square both ends, laid ${rake.lay === 'flat' ? 'flat' : 'on edge'} over the end frame`],
          rake: {
            surface: leg.surface,
            edge: u(e.edge),
            frame: u(e.frame),
            v0: i * each,
            v1: (i + 1) * each,
            back,
            over: Math.abs(e.edge - e.frame),
            barge: { weight: barge.weight * each, at: Math.abs(e.edge - e.frame) - barge.b / 2 },
            lay: rake.lay,
          },
        });
        const width = rake.lay === 'flat' ? look.d : look.b;
        const kind = 'outlooker-to-frame';
        seats.push(
          { kind, member: id, support: end.id, at: at(v, e.frame, thick), contact: { length: end.section.b, width } },
          { kind, member: id, support: next.id, at: at(v, e.back, thick / 2), contact: { length: 0, width: 0 } },
        );
        const [w, b] = [look.weight * long, barge.weight * each];
        const lever = (w * (long / 2 - back) + b * (Math.abs(e.edge - e.frame) - barge.b / 2)) / back;
        hang(end, w + b + lever);
        hang(next, -lever);
      }
      boards.push({
        ...common,
        id: `${bargeMark}-${serial(boards.length + 1)}`,
        mark: bargeMark,
        role: 'barge',
        section: barge,
        start: at(0, e.edge - (out * barge.b) / 2, barge.d / 2),
        end: at(slope, e.edge - (out * barge.b) / 2, barge.d / 2),
        up: normal,
        length: slope + barge.d * tan,
        cuts: [`plumb cut ${degrees(roof.pitch)} both ends`],
      });
    }
  }
  const dropped = `top chord dropped ${inches(thick)} for the outlookers`;
  const loaded = (m: Member): Member => {
    const weight = hung.get(m.id);
    if (weight === undefined) return m;
    const { start: a, end: b } = m;
    const axis = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
    return { ...m, hung: weight / axis, ...(m.role === 'gable-truss' ? { cuts: [...m.cuts, dropped] } : {}) };
  };
  return {
    ...framed,
    members: [...framed.members.map(loaded), ...members, ...boards],
    seats: [...framed.seats, ...seats],
    tails: framed.tails.map((row) => row.map(loaded)),
  };
}
