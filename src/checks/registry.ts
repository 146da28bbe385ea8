/** Every check, in the order results are listed. A new check is one file and one line here. */
import { frameSolved, loadBalance } from './basis/frame.js';
import { loadRange } from './basis/load-range.js';
import { officeAnswers } from './basis/office-answers.js';
import { patioAppendix } from './basis/patio-appendix.js';
import { coveringUplift } from './cladding/covering-uplift.js';
import { sheathingNails } from './cladding/sheathing-nails.js';
import { sheathingSpan } from './cladding/sheathing-span.js';
import { windComponents } from './cladding/wind-components.js';
import type { Check } from './contract.js';
import { durability } from './durability/durability.js';
import { doorLight, patioReceptacle } from './electrical/devices.js';
import { anchor } from './footings/anchor.js';
import { baseBearing } from './footings/base-bearing.js';
import { embedment } from './footings/embedment.js';
import { houseFooting } from './footings/house-footing.js';
import { pierStrength } from './footings/pier.js';
import { footingFlexure, footingShear } from './footings/plain-concrete.js';
import { footingSize, frostDepth, postFoot } from './footings/sizes.js';
import { slabPost } from './footings/slab-post.js';
import { soilBearing } from './footings/soil-bearing.js';
import { footingOverturning, footingSliding } from './footings/stability.js';
import { footingUplift } from './footings/uplift.js';
import { existingBuilding } from './house/existing-building.js';
import { houseConnection } from './house/house-connection.js';
import { ledgerFasteners } from './house/ledger-fasteners.js';
import { ledgerStrength } from './house/ledger-strength.js';
import { jointBearing } from './joints/bearing.js';
import { jointProducts } from './joints/products.js';
import { tieHeel } from './joints/tie-heel.js';
import { baseMoment } from './lateral/base-moment.js';
import { diaphragm } from './lateral/diaphragm.js';
import { diaphragmChord } from './lateral/diaphragm-chord.js';
import { heelBlocking } from './lateral/heel-blocking.js';
import { housePath } from './lateral/house-path.js';
import { houseTie } from './lateral/house-tie.js';
import { swayX, swayY } from './lateral/sway.js';
import { bendingCheck } from './members/bending.js';
import { slendernessCheck } from './members/braces.js';
import { combinedCheck } from './members/combined.js';
import { deflectionCheck } from './members/deflection.js';
import { outlookerBending, outlookerShear } from './members/outlookers.js';
import { postCombined, postShear } from './members/post-bending.js';
import { postBearing, postSlenderness, postStability, postTension } from './members/posts.js';
import { notchCheck, shearCheck } from './members/shear.js';
import { tieSlenderness } from './members/tie-slenderness.js';
import { loadPathClosed } from './path/load-path.js';
import { plyFastening } from './plies/ply-fastening.js';
import { coveringSlope } from './roof/covering-slope.js';
import { gutter } from './roof/gutter.js';
import { headroom } from './roof/headroom.js';
import { slabFall } from './roof/slab-fall.js';
import { waterAtWall } from './roof/water-at-wall.js';
import { equipmentClearance } from './rooms/equipment.js';
import { escapePath } from './rooms/escape.js';
import { guard } from './rooms/guard.js';
import { doorLanding } from './rooms/landing.js';
import { roomAir, roomLight } from './rooms/light-and-air.js';
import { seismic } from './seismic/seismic.js';
import { snowDrift, snowPartial, snowSliding, snowUnbalanced } from './snow/uneven-snow.js';
import { OVERLAY_CHECKS } from './tie-in/index.js';
import { engineerTriggers } from './triggers/engineer.js';
import { trussPapers } from './trusses/papers.js';
import { trussPreliminary } from './trusses/preliminary.js';
import { scissorSpread } from './trusses/spread.js';
import { scissorThrust } from './trusses/thrust.js';
import { windAttached } from './wind/attached.js';
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
  patioAppendix,
  frameSolved,
  loadBalance,
  loadPathClosed,

  lotClosure,
  lotCoverage,
  setback,
  heightLimit,
  easement,
  fireSeparation,

  coveringSlope,
  slabFall,
  headroom,
  gutter,
  waterAtWall,

  bendingCheck('rafter', 'Rafter bending'),
  shearCheck('rafter', 'Rafter shear'),
  notchCheck('rafter', 'Rafter seat cut'),
  combinedCheck('rafter', 'Rafter bending both ways with axial force'),
  deflectionCheck('rafter', 'Rafter', 'live'),
  deflectionCheck('rafter', 'Rafter', 'total'),
  deflectionCheck('rafter', 'Rafter', 'long-term'),

  bendingCheck('hip', 'Hip bending'),
  shearCheck('hip', 'Hip shear'),
  notchCheck('hip', 'Hip seat cut'),
  combinedCheck('hip', 'Hip bending both ways with axial force'),
  deflectionCheck('hip', 'Hip', 'live'),
  deflectionCheck('hip', 'Hip', 'total'),
  deflectionCheck('hip', 'Hip', 'long-term'),

  combinedCheck('tie', 'Rafter tie in tension, compression and bending'),
  tieSlenderness,
  tieHeel,

  bendingCheck('beam', 'Beam bending'),
  shearCheck('beam', 'Beam shear'),
  combinedCheck('beam', 'Beam bending both ways with axial force'),
  deflectionCheck('beam', 'Beam', 'live'),
  deflectionCheck('beam', 'Beam', 'total'),
  deflectionCheck('beam', 'Beam', 'long-term'),

  outlookerBending,
  outlookerShear,

  windComponents,
  sheathingSpan,
  sheathingNails,
  coveringUplift,

  jointBearing,
  plyFastening,

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
  footingOverturning,
  footingSliding,
  embedment,
  frostDepth,
  footingSize,
  footingFlexure,
  footingShear,
  pierStrength,
  baseBearing,
  anchor,
  slabPost,
  houseFooting,
  postFoot,

  durability,
  engineerTriggers,

  jointProducts,
  trussPapers,
  trussPreliminary,
  scissorSpread,
  scissorThrust,
  snowUnbalanced,
  snowPartial,
  snowDrift,
  snowSliding,
  windAttached,
  seismic,
  swayX,
  swayY,
  diaphragm,
  diaphragmChord,
  heelBlocking,
  houseTie,
  housePath,
  ledgerStrength,
  ledgerFasteners,
  houseConnection,
  existingBuilding,

  roomLight,
  roomAir,
  escapePath,
  doorLanding,
  guard,
  equipmentClearance,
  patioReceptacle,
  doorLight,
  ...OVERLAY_CHECKS,
];
