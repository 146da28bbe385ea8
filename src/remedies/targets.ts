/** Objects of the project file whose values bear on a result: those of its part, of what it is made of, and of what holds it. */
import type { CheckResult } from '../checks/contract.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';

export interface Target {
  readonly path: string;
  /** `beam B1`, `footing F1 and all others of “pier”`. */
  readonly what: string;
}

export function targetsOf(r: CheckResult, project: Project, structure: Structure): Target[] {
  const out: Target[] = [];
  const mark = r.subject;
  const sections = (ids: readonly string[]): void => {
    for (const m of structure.members) {
      if (!ids.includes(m.mark) && !ids.includes(m.id)) continue;
      if (m.section.path) out.push({ path: m.section.path, what: `“${m.section.choice}”` });
      const roof = structure.roofs.find((x) => x.mark === m.roof);
      if (roof) out.push({ path: `${roof.path}/framing`, what: `framing of ${roof.mark}` });
    }
  };
  sections([mark]);
  const footings = structure.footings.filter((f) => f.mark === mark || f.id === mark);
  for (const f of footings) out.push({ path: `/choices/footings/${f.choice}`, what: `footing “${f.choice}”` });
  const joints = structure.joints.filter((j) => j.mark === mark);
  const serving = (s: readonly string[]): boolean => s.includes(mark) || joints.some((j) => s.includes(j.kind));
  for (const p of project.choices.joints) if (serving(p.serves)) out.push({ path: p.path, what: `“${p.product}”` });
  for (const j of joints.slice(0, 1)) {
    sections(j.ties.map((t) => t.part));
    for (const t of j.ties) {
      const f = structure.footings.find((x) => x.id === t.part);
      if (f) out.push({ path: `/choices/footings/${f.choice}`, what: `footing “${f.choice}”` });
    }
  }
  const roof = structure.roofs.find((x) => x.mark === mark);
  if (roof) {
    out.push({ path: `${roof.path}/framing`, what: `framing of ${mark}` });
    out.push({ path: `${roof.path}/finish/nailing`, what: `sheathing of ${mark}` });
    out.push({ path: `${roof.path}/finish/nailing/heel`, what: `blocks of ${mark}` });
  }
  return out.filter((t, i) => out.findIndex((o) => o.path === t.path) === i);
}
