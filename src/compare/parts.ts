/** Placed parts that came, went, moved or were made of something else. */
import type { Derived } from '../report/derived.js';
import type { Structure } from '../structure/model.js';

export interface PartChange {
  /** Id as in the structure: `P2`, `RF1-07`, `J3-02`. */
  readonly part: string;
  readonly mark: string;
  readonly how: 'added' | 'removed' | 'moved' | 'changed';
}

interface Known {
  readonly mark: string;
  /** Where it is, and what it is: texts that are equal when nothing of it changed. */
  readonly place: string;
  readonly kind: string;
}

/** Rounded to a 64th of an inch, so that noise of the last digit is no move. */
const place = (v: unknown): string =>
  JSON.stringify(v, (_, x) => (typeof x === 'number' ? Math.round(x * 64) / 64 : x));

function partsOf(s: Structure): Map<string, Known> {
  const out = new Map<string, Known>();
  for (const m of s.members) {
    out.set(m.id, {
      mark: m.mark,
      place: place([m.start, m.end]),
      kind: place([m.section.label, m.section.treatment, m.length, m.cuts, m.truss ?? null, m.nails ?? null]),
    });
  }
  for (const f of s.footings) {
    out.set(f.id, {
      mark: f.mark,
      place: place([f.at, f.bottom, f.top]),
      kind: place([f.kind, f.size, f.pierDiameter, f.padThickness, f.fc, f.steel]),
    });
  }
  for (const j of s.joints)
    out.set(j.id, { mark: j.mark, place: place(j.at), kind: place([j.kind, j.ties.map((t) => t.part)]) });
  for (const f of s.surfaces)
    out.set(f.id, { mark: f.mark, place: place([f.origin, f.outline, f.slope]), kind: place(f.layers) });
  for (const b of s.slabs)
    out.set(b.mark, { mark: b.mark, place: place(b.outline), kind: place([b.state, b.thickness]) });
  return out;
}

/** Parts that differ between two structures, in the order of the new one; what is gone comes last. */
export function changedParts(before: Derived, after: Derived): PartChange[] {
  if (!before.structure || !after.structure) return [];
  const [a, b] = [partsOf(before.structure), partsOf(after.structure)];
  const out: PartChange[] = [];
  for (const [part, now] of b) {
    const old = a.get(part);
    if (!old) out.push({ part, mark: now.mark, how: 'added' });
    else if (old.kind !== now.kind) out.push({ part, mark: now.mark, how: 'changed' });
    else if (old.place !== now.place) out.push({ part, mark: now.mark, how: 'moved' });
  }
  for (const [part, old] of a) if (!b.has(part)) out.push({ part, mark: old.mark, how: 'removed' });
  return out;
}
