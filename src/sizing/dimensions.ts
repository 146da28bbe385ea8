/** What of a project can be sized: sections of beams, posts and rafters, and pads of footings. Joints are not touched. */
import { GLULAM_DEPTHS } from '../catalog/index.js';
import type { FootingChoice, Project, SectionChoice, WoodChoice } from '../project/model.js';
import type { Member, Structure } from '../structure/model.js';
import type { Dimension, Option } from './model.js';

const withSection =
  (name: string, choice: SectionChoice) =>
  (p: Project): Project => ({
    ...p,
    choices: { ...p.choices, sections: { ...p.choices.sections, [name]: choice } },
  });

/** A part made of the choice, or a joint one of whose parts is. */
const madeOf =
  (match: (m: Member) => boolean) =>
  (subject: string, s: Structure): boolean => {
    const own = new Set(s.members.filter(match).flatMap((m) => [m.id, m.mark]));
    if (own.has(subject)) return true;
    return s.joints.some((j) => (j.mark === subject || j.id === subject) && j.ties.some((t) => own.has(t.part)));
  };

/** Wood of a section, where it is sawn. */
const woodOf = (c: SectionChoice): WoodChoice | undefined => ('species' in c ? c : undefined);

const sawn = (name: string, sizes: readonly string[], wood: WoodChoice): Option[] =>
  sizes.map((size) => ({
    label: `${size} ${wood.species} ${wood.grade}`,
    apply: withSection(name, { ...plain(wood), kind: 'solid', size }),
  }));

const plain = (w: WoodChoice): WoodChoice => ({
  species: w.species,
  grade: w.grade,
  treatment: w.treatment,
  incised: w.incised,
  service: w.service,
});

const builtUp = (name: string, wood: WoodChoice): Option[] =>
  ['2x8', '2x10', '2x12'].flatMap((ply) =>
    [2, 3].map((plies) => ({
      label: `(${plies}) ${ply} ${wood.species} ${wood.grade}`,
      apply: withSection(name, {
        ...plain(wood),
        kind: 'built-up',
        plies,
        ply,
        spacers: 0,
        spacerThickness: 0,
        fastening: 'two rows of 16d common nails at 12 in',
        plyFastening: { fastener: 'common-16d', rows: 2, spacing: 12, edge: 2, end: 3 },
      }),
    })),
  );

const glulam = (name: string, old: Extract<SectionChoice, { kind: 'glulam' }>): Option[] =>
  GLULAM_DEPTHS.filter((d) => d >= 6 && d <= 18).map((depth) => ({
    label: `${old.width} x ${depth} in ${old.combination} glulam`,
    apply: withSection(name, { ...old, depth }),
  }));

function beamOptions(name: string, c: SectionChoice): Option[] {
  if ('combination' in c) return glulam(name, c);
  const wood = woodOf(c);
  if (!wood) return [];
  return 'ply' in c ? builtUp(name, wood) : sawn(name, ['4x8', '4x10', '4x12', '6x8', '6x10', '6x12'], wood);
}

const PADS = [16, 18, 20, 24, 28, 30, 36, 42, 48];

function footingOptions(name: string, c: FootingChoice): Option[] {
  if (!('width' in c)) return [];
  return PADS.map((width) => ({
    label: `${width} in pad`,
    apply: (p: Project): Project => ({
      ...p,
      choices: { ...p.choices, footings: { ...p.choices.footings, [name]: { ...c, width } } },
    }),
  }));
}

const named = (list: readonly (string | undefined)[]): string[] => [...new Set(list.filter((n) => n !== undefined))];

/** Every choice of a project that has alternatives here. */
export function dimensionsOf(p: Project): Dimension[] {
  const sections = p.choices.sections;
  const out: Dimension[] = [];
  const put = (id: string, title: string, options: readonly Option[], concerns: Dimension['concerns']): void => {
    if (options.length > 1) out.push({ id, title, options, concerns });
  };
  const bySection = (name: string) => madeOf((m) => m.section.choice === name);
  for (const name of named(p.cover.beams.map((b) => b.section))) {
    const c = sections[name];
    if (c) put(`beam:${name}`, `beams "${name}"`, beamOptions(name, c), bySection(name));
  }
  const posts = p.cover.beams.flatMap((b) => b.posts);
  for (const name of named(posts.map((x) => x.section))) {
    const wood = sections[name] && woodOf(sections[name]);
    if (wood) put(`post:${name}`, `posts "${name}"`, sawn(name, ['4x4', '4x6', '6x6', '8x8'], wood), bySection(name));
  }
  for (const name of named(p.cover.roofs.map((r) => ('section' in r.framing ? r.framing.section : undefined)))) {
    const wood = sections[name] && woodOf(sections[name]);
    if (wood)
      put(`rafter:${name}`, `rafters "${name}"`, sawn(name, ['2x6', '2x8', '2x10', '2x12'], wood), bySection(name));
  }
  for (const name of named(posts.map((x) => x.footing))) {
    const c = p.choices.footings[name];
    const concerns = (subject: string, s: Structure): boolean =>
      s.footings.some((f) => f.choice === name && (f.id === subject || f.mark === subject));
    if (c) put(`footing:${name}`, `footings "${name}"`, footingOptions(name, c), concerns);
  }
  return out;
}
