/** Choices an owner weighs. Sizes are a start for the comparison, not a design: the checks say whether they do. */
import type { CoverRoof, FramingChoice, Project, SectionChoice, WoodChoice } from '../../project/model.js';
import type { Variant } from './model.js';

const PLAIN: WoodChoice = {
  species: 'Douglas Fir-Larch',
  grade: 'No. 2',
  treatment: 'none',
  incised: false,
  service: 'dry',
};
const solid = (size: string, wood: WoodChoice): SectionChoice => ({ ...wood, kind: 'solid', size });

/** Replaces the framing of the gables that `from` names; sections it needs come along. */
function reframe(
  p: Project,
  make: (f: FramingChoice, r: CoverRoof) => FramingChoice | undefined,
  sections: Readonly<Record<string, SectionChoice>>,
): Project | undefined {
  let changed = false;
  const roofs = p.cover.roofs.map((r): CoverRoof => {
    const framing = make(r.framing, r);
    if (!framing) return r;
    changed = true;
    return { ...r, framing };
  });
  if (!changed) return undefined;
  // Sealed papers are of the trusses that were: they say nothing of what replaces them.
  const { trussPapers: _, ...cover } = p.cover;
  return {
    ...p,
    cover: { ...cover, roofs },
    choices: { ...p.choices, sections: { ...p.choices.sections, ...sections } },
  };
}

const rafters: Variant = {
  id: 'rafters',
  title: 'Rafters with ties in place of trusses',
  change: (p) => {
    const project = reframe(
      p,
      (f) =>
        'chord' in f
          ? {
              kind: 'rafter',
              spacing: f.spacing,
              section: 'compared rafter',
              ties: { section: 'compared tie', height: 6, ridgeBoard: 'compared ridge', nail: 'common-16d', nails: 4 },
            }
          : undefined,
      {
        'compared rafter': solid('2x8', PLAIN),
        'compared tie': solid('2x6', PLAIN),
        'compared ridge': solid('2x10', PLAIN),
      },
    );
    return (
      project && {
        project,
        words: 'rafters 2x8, ties 2x6, ridge board 2x10, DF-L No. 2, at the spacing of the trusses',
      }
    );
  },
};

const trusses: Variant = {
  id: 'trusses',
  title: 'Trusses in place of rafters',
  change: (p) => {
    const project = reframe(
      p,
      // Both slopes of a gable; a roof of one slope has no truss here.
      (f, r) =>
        'section' in f && 'beams' in r && !('ends' in r)
          ? {
              kind: 'common-truss',
              spacing: f.spacing,
              chord: '2x4',
              wood: PLAIN,
              heel: 6,
              bottomPitch: 0,
              weight: 6,
            }
          : undefined,
      {},
    );
    if (!project) return undefined;
    const roofs = project.cover.roofs.map((r): CoverRoof => {
      if (!('ridgeBeam' in r)) return r;
      const { ridgeBeam: _, ...rest } = r;
      return rest as CoverRoof;
    });
    return {
      project: { ...project, cover: { ...project.cover, roofs } },
      words: 'common trusses, 2x4 chords, at the spacing of the rafters',
    };
  },
};

/** Names of the sections that beams are made of. */
const beamSections = (p: Project): string[] => [...new Set(p.cover.beams.map((b) => b.section))];

const beams = (
  id: string,
  title: string,
  words: string,
  make: (old: SectionChoice) => SectionChoice | undefined,
): Variant => ({
  id,
  title,
  change: (p) => {
    const sections: Record<string, SectionChoice> = {};
    for (const name of beamSections(p)) {
      const old = p.choices.sections[name];
      const next = old && make(old);
      if (next) sections[name] = next;
    }
    if (Object.keys(sections).length === 0) return undefined;
    return { project: { ...p, choices: { ...p.choices, sections: { ...p.choices.sections, ...sections } } }, words };
  },
});

const service = (c: SectionChoice) => ({ treatment: c.treatment, service: c.service });

const builtUp = beams('built-up', 'Built-up beams', '(3) 2x12 DF-L No. 1 with two 1/2 in plywood strips', (old) =>
  'combination' in old
    ? {
        kind: 'built-up',
        plies: 3,
        ply: '2x12',
        spacers: 2,
        spacerThickness: 0.5,
        fastening: 'two rows of 16d common nails at 12 in from both faces',
        plyFastening: { fastener: 'common-16d', rows: 2, spacing: 12, edge: 2, end: 3 },
        species: 'Douglas Fir-Larch',
        grade: 'No. 1',
        incised: false,
        ...service(old),
      }
    : undefined,
);
const glulam = beams('glulam', 'Glulam beams', '5 1/2 x 12 in, 24F-V4', (old) =>
  'ply' in old || 'size' in old
    ? { kind: 'glulam', combination: '24F-V4', width: 5.5, depth: 12, ...service(old) }
    : undefined,
);

export const VARIANTS: readonly Variant[] = [rafters, trusses, builtUp, glulam];
