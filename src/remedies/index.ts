export { type Remedy, remediesOf } from './remedies.js';
