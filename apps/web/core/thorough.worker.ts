/** Does what takes longer: tries remedies, makes files, sets up the model. Started when first needed. */
import { derive, remediesOf, sceneOf, sceneState } from '../../../src/index.js';
import type { Thorough } from './api.js';
import { exportFiles } from './exports.js';
import * as whole from './whole.js';
import { workApi } from './work.js';
import { know, listen, quickApi, sheets, stateNow } from './worker.js';

know(whole);

const api: Thorough = {
  ...quickApi,
  ...workApi,
  remedies: (id) => {
    const { text, derived } = stateNow();
    return remediesOf(text, derived, id, derive);
  },
  scene: () => {
    const { project, structure } = stateNow().derived;
    return project && structure && sceneOf(project, structure);
  },
  combinations: () => stateNow().derived.loads?.combinations.map((c) => c.id) ?? [],
  sceneState: (combination) => {
    const { structure, loads, effects } = stateNow().derived;
    return structure && loads && effects && sceneState(structure, loads, effects, combination);
  },
  export: (kind, fonts, sheet) => exportFiles(kind, stateNow().derived, sheets(), fonts, sheet),
};

listen(api);
