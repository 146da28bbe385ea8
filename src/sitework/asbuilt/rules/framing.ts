import { LEAST_BEARING } from '../../../structure/constants.js';
import type { Joint, Member } from '../../../structure/model.js';
import type { FitContext, FitRule } from './contract.js';

/** How near to its place a truss is set (industry training cards on setting trusses). */
const SETTING = 1 / 4;
const SETTING_SOURCE =
  'setting within 1/4 in of plan: training cards; bearing 1-1/2 in on wood: IRC 2018 R802.6, recalled';

interface Reach {
  readonly mark: string;
  /** How much farther apart its two supports stand than drawn. */
  readonly wider: number;
  /** Undefined where it hangs in a connector and bears on no seat. */
  readonly seatLeft: number | undefined;
  /** How far its end passes or misses the drawn place on a beam. */
  readonly each: number;
  readonly need: number;
}

/** Movement, along the member, of what it bears on at a joint; undefined when that is no beam of the cover: the house stays. */
function moved(ctx: FitContext, member: Member, joint: Joint): number | undefined {
  const support = ctx.structure.members.find((m) => m.id === joint.ties[1]?.part);
  const beam = ctx.beams.find((b) => b.mark === support?.mark);
  const line = ctx.project.cover.beams.find((b) => b.mark === support?.mark);
  if (!beam || !line || beam.posts.length === 0) return undefined;
  const run = { x: member.end.x - member.start.x, y: member.end.y - member.start.y };
  const size = Math.hypot(run.x, run.y);
  if (!(size > 0)) return undefined;
  const at = (joint.at.x - line.from.x) * beam.dir.x + (joint.at.y - line.from.y) * beam.dir.y;
  const across = beam.acrossAt(at);
  return (across * (-beam.dir.y * run.x + beam.dir.x * run.y)) / size;
}

function reachOf(ctx: FitContext, member: Member): Reach | undefined {
  const seats = ctx.structure.joints
    .filter(
      (j) =>
        j.ties[0]?.part === member.id &&
        (j.kind === 'truss-to-beam' || j.kind === 'rafter-to-beam' || j.kind === 'rafter-to-ledger'),
    )
    .map((joint) => ({ joint, by: moved(ctx, member, joint) }));
  if (seats.length < 2 || seats.every((s) => s.by === undefined)) return undefined;
  const ahead = (j: Joint): number =>
    (j.at.x - member.start.x) * (member.end.x - member.start.x) +
    (j.at.y - member.start.y) * (member.end.y - member.start.y);
  const [a, b] = [...seats].sort((p, q) => ahead(p.joint) - ahead(q.joint));
  const wider = (b!.by ?? 0) - (a!.by ?? 0);
  // Between two beams it is set in the middle; against the house all of it shows at the beam.
  const each = a!.by === undefined || b!.by === undefined ? Math.abs(wider) : Math.abs(wider) / 2;
  const widths = seats
    .filter((s) => s.by !== undefined)
    .map((s) => s.joint.contact.length)
    .filter((l) => l > 0);
  const paper = ctx.project.cover.trussPapers?.find((p) => p.mark === member.mark);
  return {
    mark: member.mark,
    wider,
    each,
    // Beams that stand too near take nothing off a seat: the ends pass them.
    seatLeft: widths.length > 0 ? Math.max(0, Math.min(...widths) - (wider > 0 ? each : 0)) : undefined,
    need: paper?.bearingWidth ?? LEAST_BEARING,
  };
}

/** Does the framing still reach, and bear? Trusses come from the plant as they were ordered; rafters are cut on the site. */
export const framing: FitRule = {
  id: 'framing-reach',
  title: 'Trusses and rafters on their beams',
  run(ctx) {
    const marks = new Map<string, { reach: Reach; member: Member }>();
    for (const member of ctx.structure.members) {
      if (member.state !== 'new' || member.strips.length === 0) continue;
      const reach = reachOf(ctx, member);
      if (!reach) continue;
      const known = marks.get(member.mark);
      if (!known || Math.abs(reach.wider) > Math.abs(known.reach.wider)) marks.set(member.mark, { reach, member });
    }
    return [...marks.values()].map(({ reach, member }) => {
      const { wider, seatLeft, need, each } = reach;
      const { len } = ctx;
      const apart = `Its bearings stand up to ${len(Math.abs(wider))} ${wider < 0 ? 'nearer together' : 'farther apart'} than drawn`;
      const seat =
        seatLeft === undefined
          ? 'it hangs in its connectors.'
          : wider < 0
            ? `set in the middle it passes its seat by ${len(each)} and keeps all ${len(seatLeft)} of it.`
            : `set in the middle it has ${len(seatLeft)} of seat left, ${len(need)} needed.`;
      const found = `${apart}; ${seat}`;
      const base = { part: member.mark, found, source: SETTING_SOURCE };
      if (seatLeft !== undefined && seatLeft < need - 1e-6)
        return {
          ...base,
          state: 'stop',
          remedy: member.truss
            ? 'Stop: too little bearing. Ask the truss plant’s engineer before a truss is lifted; no truss is cut or packed out in the field.'
            : 'Stop: too little bearing. Longer rafters, or the beam moved back.',
        };
      if (each <= SETTING) return { ...base, state: 'fits', remedy: '' };
      return {
        ...base,
        state: 'adjust',
        remedy: member.truss
          ? `Set each truss in the middle of both beams. Tell the truss plant the measured span before it cuts, ${len(Math.abs(wider))} ${wider < 0 ? 'less' : 'more'} over the outer faces.`
          : `Measure between the beams and cut the rafters to it: ${len(Math.abs(wider))} ${wider < 0 ? 'less' : 'more'} of span, seat cut shifted with it.`,
      };
    });
  },
};
