/** What the jurisdiction and the site require. */
import type { Inches, Mph, Pcf, Psf } from '../../base/units.js';
import type { Office } from './base.js';
import type { CodeBundle } from './job.js';

export type Exposure = 'B' | 'C' | 'D';

export type RiskCategory = 'I' | 'II' | 'III' | 'IV';

export type SnowExposure = 'fully' | 'partially' | 'sheltered';

export type SeismicCategory = 'A' | 'B' | 'C' | 'D0' | 'D1' | 'D2' | 'E';

export type Yard = 'front' | 'rear' | 'left' | 'right' | 'street-side';

/** Edge of the new work from which the office measures a setback. */
export type ReferenceEdge = 'post' | 'eave';

export interface Basis {
  readonly codes: CodeBundle;
  readonly riskCategory: RiskCategory;
  readonly wind: {
    readonly speed: Office<Mph>;
    readonly exposure: Office<Exposure>;
    /** Topographic factor Kzt. */
    readonly topographic: Office<number>;
    /** Ground elevation above sea level, for Ke. */
    readonly elevation: Inches;
    /** Wind blockage under the roof that can occur; `both` runs clear and obstructed flow. */
    readonly flow: 'clear' | 'obstructed' | 'both';
  };
  readonly snow: { readonly ground: Office<Psf>; readonly exposure: Office<SnowExposure> };
  readonly roofLive: {
    readonly minimum: Office<Psf>;
    /** Patio-cover appendix adopted by name in this jurisdiction. */
    readonly patioAppendix: Office<boolean>;
    /** Whether the area and slope reductions may be used. */
    readonly reduce: boolean;
  };
  readonly seismic: {
    readonly category: Office<SeismicCategory>;
    /** Design accelerations SDS, SD1 and mapped S1, g, and the site class; absent when not given. */
    readonly sds?: Office<number>;
    readonly sd1?: Office<number>;
    readonly s1?: Office<number>;
    readonly siteClass?: Office<string>;
  };
  /** Which code the office applies to load added to the existing house; absent when not given. */
  readonly existingHouse?: Office<'residential' | 'existing-building'>;
  /** Rainfall of one hour that gutters are sized for, inches an hour; absent when not given. */
  readonly rainfall?: Office<number>;
  readonly frost: Office<Inches>;
  readonly soil: {
    readonly bearing: Office<Psf>;
    /** Lateral bearing, psf per foot of depth. */
    readonly lateral: Office<number>;
    /** Friction between concrete and soil, and cohesion: counted against sliding only when the office or a report gives them. */
    readonly friction?: Office<number> | undefined;
    readonly cohesion?: Office<Psf> | undefined;
    /** Friction of soil on concrete cast against it, allowable, counted against uplift only when given. */
    readonly skinFriction?: Office<Psf> | undefined;
    /** Whether 1/2 in of motion at the ground surface does the cover no harm (IBC 1806.3.4). */
    readonly halfInchMotion?: Office<boolean> | undefined;
    readonly density: Pcf;
    readonly description: string;
  };
  readonly zoning: {
    readonly coverageLimit: Office<number>;
    readonly coverageOf: 'lot' | 'rear-yard';
    readonly setbacks: Readonly<Record<Yard, Office<Inches>>>;
    readonly referenceEdge: Office<ReferenceEdge>;
    readonly heightLimit: Office<Inches>;
    /** Lowest clear height under beams and framing above the walking surface. */
    readonly headroom: Inches;
  };
  /** Rows of the design-criteria block that nothing computes with, printed as given: weathering, termite, ice barrier… */
  readonly criteria: readonly { readonly label: string; readonly value: Office<string> }[];
}
