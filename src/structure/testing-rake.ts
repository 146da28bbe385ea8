/** Gables whose rakes lie on outlookers: `rakeProject` of rafters on a ridge beam, `rakeTrussProject` of trusses. For tests. */
import type { Project, SectionChoice } from '../project/model.js';
import { change, gableProject, shedProject } from './testing.js';
import { ridgeProject } from './testing-ridge.js';

const sawn = (size: string): SectionChoice => ({
  kind: 'solid',
  size,
  species: 'Douglas Fir-Larch',
  grade: 'No. 2',
  treatment: 'none',
  incised: false,
  service: 'dry',
});

const rakeFraming = { section: 'look', lay: 'flat', spacing: 24, barge: 'barge' } as const;
const sections = { look: sawn('2x4'), barge: sawn('2x6'), ender: sawn('2x8') };

export const rakeProject: Project = change(ridgeProject, {
  cover: { roofs: (old) => old.map((r) => ({ ...r, rake: 18, rakeFraming: { ...rakeFraming, endFrame: 'ender' } })) },
  choices: { sections: (old) => ({ ...old, ...sections }) },
});

export const rakeTrussProject: Project = change(gableProject, {
  cover: { roofs: (old) => old.map((r) => ({ ...r, rake: 18, rakeFraming })) },
  choices: { sections: (old) => ({ ...old, ...sections }) },
});

/** A shed on its ledger, the end rafters as much shallower as the outlookers are thick. */
export const rakeShedProject: Project = change(shedProject, {
  cover: { roofs: (old) => old.map((r) => ({ ...r, rake: 14, rakeFraming: { ...rakeFraming, endFrame: 'ender' } })) },
  choices: { sections: (old) => ({ ...old, ...sections }) },
});
