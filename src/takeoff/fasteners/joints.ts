/** Every joint by its own rule: the product or connection that serves it, or what the code's schedule and the spec say. */
import { servedBy } from '../../checks/joints/serving.js';
import type { Joint, JointKind, Member, Structure } from '../../structure/model.js';
import { inches } from '../../structure/text.js';
import type { Open, TakeoffContext } from '../model.js';
import type { Counted } from './model.js';
import { diameter, named } from './names.js';
import { type AtJoint, countPart } from './parts.js';
import { JOINT_PHASE } from './phases.js';

export interface JointCount {
  readonly counted: readonly Counted[];
  readonly open: readonly Open[];
}

type Rule = (ctx: TakeoffContext, joints: readonly Joint[]) => Counted[] | undefined;

const marksOf = (structure: Structure, j: Joint): string[] =>
  j.ties.flatMap(
    (t) =>
      structure.members.find((m) => m.id === t.part)?.mark ??
      structure.footings.find((f) => f.id === t.part)?.mark ??
      [],
  );

/** Ledger fasteners as its own spec lays them out: each joint is a place, each row a fastener there. */
const ledger: Rule = ({ project, structure }, joints) => {
  const counted: Counted[] = [];
  for (const spec of project.cover.ledgers) {
    const f = spec.fastening;
    const places = joints.filter((j) => j.ties[0]?.part === spec.mark).length;
    if (!f) {
      if (places > 0) return undefined;
      continue;
    }
    const count = places * f.rows.length;
    const words = { lag: 'lag screw', screw: 'structural screw', bolt: 'bolt' }[f.kind];
    const item = `${words} ${diameter(f.diameter)} x ${inches(f.length)}`;
    const common = { phase: 'posts-and-beams', serves: [spec.mark] } as const;
    counted.push({ item, count, ...common });
    // A bolt passes through and has a washer and a nut on the far side too.
    const through = f.kind === 'bolt';
    if (f.kind !== 'screw')
      counted.push({
        item: `washer ${inches(f.washer)} for ${diameter(f.diameter)}`,
        count: through ? 2 * count : count,
        ...common,
      });
    if (through) counted.push({ item: `nut for ${diameter(f.diameter)} bolt`, count, ...common });
  }
  return counted.length > 0 && structure.walls.length > 0 ? counted : undefined;
};

/** Two nails in each tail. Common practice, no source. */
const FASCIA_NAILS = { id: 'common-16d', count: 2 };
const fascia: Rule = ({ structure }, joints) => [
  {
    ...named(FASCIA_NAILS.id),
    count: FASCIA_NAILS.count * joints.length,
    phase: 'framing',
    serves: joints.flatMap((j) => marksOf(structure, j).slice(0, 1)),
  },
];

const tieNails: Rule = ({ structure }, joints) => {
  const members = new Map(structure.members.map((m) => [m.id, m]));
  const out: Counted[] = [];
  for (const j of joints) {
    const tie = j.ties.map((t) => members.get(t.part)).find((m): m is Member => m?.nails !== undefined);
    if (!tie?.nails) return undefined;
    out.push({ ...named(tie.nails.nail), count: tie.nails.count, phase: 'framing', serves: [tie.mark] });
  }
  return out;
};

/** What a joint without a row of its own is made with. */
const RULES: Partial<Record<JointKind, Rule>> = {
  'ledger-to-house': ledger,
  'fascia-to-framing': fascia,
  'tie-to-rafter': tieNails,
};

function widths(structure: Structure, j: Joint): AtJoint {
  const at = (k: number): number => structure.members.find((m) => m.id === j.ties.at(k)?.part)?.section.width ?? 0;
  return { upper: at(0), lower: at(-1) };
}

export function countJoints(ctx: TakeoffContext): JointCount {
  const { structure, project } = ctx;
  const groups = new Map<string, Joint[]>();
  for (const j of structure.joints) groups.set(j.mark, [...(groups.get(j.mark) ?? []), j]);
  const counted: Counted[] = [];
  const open: Open[] = [];
  for (const [mark, joints] of groups) {
    const { kind, path } = joints[0]!;
    const phase = JOINT_PHASE[kind];
    const serves = [mark];
    const served = servedBy(project.choices, mark, kind);
    if (served?.by === 'product') {
      counted.push({ item: served.product.product, count: served.product.count * joints.length, phase, serves });
    } else if (served) {
      for (const j of joints)
        for (const part of served.connection.parts)
          for (const c of countPart(part, widths(structure, j))) counted.push({ ...c, phase, serves });
    } else {
      const ruled = RULES[kind]?.(ctx, joints);
      if (ruled) counted.push(...ruled.map((c) => ({ ...c, serves: [mark, ...c.serves] })));
      else
        open.push({
          what: `${joints.length} joints ${mark} (${kind.replaceAll('-', ' ')}): no product or connection is named`,
          serves,
          path,
        });
    }
  }
  return { counted, open };
}
