/** Space geometry: convex solids for what is drawn and shown, and the axes of a member. */
export { type MemberAxes, memberAxes } from './axes.js';
export { cutByPlane } from './cut.js';
export { type BarOptions, barBetween, box, prism } from './shapes.js';
export {
  type Box,
  bounds,
  faceNormal,
  heightAbove,
  middle,
  type Plane,
  planeThrough,
  type Solid,
  translate,
  volume,
} from './solid.js';
