/** Every check, in the order results are listed. A new check is one file and one line here. */
import { frameSolved, loadBalance } from './basis/frame.js';
import { loadRange } from './basis/load-range.js';
import { officeAnswers } from './basis/office-answers.js';
import { coveringUplift } from './cladding/covering-uplift.js';
import { sheathingNails } from './cladding/sheathing-nails.js';
import { sheathingSpan } from './cladding/sheathing-span.js';
import { windComponents } from './cladding/wind-components.js';
import type { Check } from './contract.js';
import { footingFlexure, footingShear } from './footings/plain-concrete.js';
import { footingSize, frostDepth, postFoot } from './footings/sizes.js';
import { soilBearing } from './footings/soil-bearing.js';
import { footingUplift } from './footings/uplift.js';
import { jointBearing } from './joints/bearing.js';
import { jointProducts } from './joints/products.js';
import { baseMoment } from './lateral/base-moment.js';
import { swayX, swayY } from './lateral/sway.js';
import { bendingCheck } from './members/bending.js';
import { slendernessCheck } from './members/braces.js';
import { combinedCheck } from './members/combined.js';
import { deflectionCheck } from './members/deflection.js';
import { postCombined, postShear } from './members/post-bending.js';
import { postBearing, postSlenderness, postStability, postTension } from './members/posts.js';
import { notchCheck, shearCheck } from './members/shear.js';
import { diaphragm, houseConnection, seismic, trussPapers } from './pending/lateral.js';
import { snowPartial } from './pending/snow-partial.js';
import { windAttached } from './pending/wind.js';
import { coveringSlope } from './roof/covering-slope.js';
import { headroom } from './roof/headroom.js';
import { slabFall } from './roof/slab-fall.js';
import { snowDrift, snowSliding, snowUnbalanced } from './snow/uneven-snow.js';
import { easement } from './zoning/easement.js';
import { fireSeparation } from './zoning/fire-separation.js';
import { heightLimit } from './zoning/height-limit.js';
import { lotClosure } from './zoning/lot-closure.js';
import { lotCoverage } from './zoning/lot-coverage.js';
import { setback } from './zoning/setback.js';

const HOLES = 'gross section: bolt holes are taken off with the joint’s own design';

export const CHECKS: readonly Check[] = [
  officeAnswers,
  loadRange,
  frameSolved,
  loadBalance,

  lotClosure,
  lotCoverage,
  setback,
  heightLimit,
  easement,
  fireSeparation,

  coveringSlope,
  slabFall,
  headroom,

  bendingCheck('rafter', 'Rafter bending'),
  shearCheck('rafter', 'Rafter shear'),
  notchCheck('rafter', 'Rafter seat cut'),
  combinedCheck('rafter', 'Rafter bending both ways with axial force'),
  deflectionCheck('rafter', 'Rafter', 'live'),
  deflectionCheck('rafter', 'Rafter', 'total'),
  deflectionCheck('rafter', 'Rafter', 'long-term'),

  bendingCheck('beam', 'Beam bending'),
  shearCheck('beam', 'Beam shear'),
  combinedCheck('beam', 'Beam bending both ways with axial force'),
  deflectionCheck('beam', 'Beam', 'live'),
  deflectionCheck('beam', 'Beam', 'total'),
  deflectionCheck('beam', 'Beam', 'long-term'),

  windComponents,
  sheathingSpan,
  sheathingNails,
  coveringUplift,

  jointBearing,

  postSlenderness,
  postStability,
  postBearing,
  postTension,
  postCombined,
  postShear,
  baseMoment,
  slendernessCheck('brace', 'Knee brace slenderness'),
  combinedCheck('brace', 'Knee brace in compression and tension', HOLES),
  slendernessCheck('strut', 'Cross member slenderness'),
  combinedCheck('strut', 'Cross member bent with axial force', HOLES),
  shearCheck('strut', 'Cross member shear'),

  soilBearing,
  footingUplift,
  frostDepth,
  footingSize,
  footingFlexure,
  footingShear,
  postFoot,

  jointProducts,
  trussPapers,
  snowUnbalanced,
  snowPartial,
  snowDrift,
  snowSliding,
  windAttached,
  seismic,
  swayX,
  swayY,
  diaphragm,
  houseConnection,
];
