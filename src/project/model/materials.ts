/** Sections and footings the cover names. */
import type { Inches, Psi } from '../../base/units.js';
import type { PlyFastening } from '../ply-fastening.js';

export type Treatment = 'none' | 'above-ground' | 'ground-contact';

export interface WoodChoice {
  readonly species: string;
  readonly grade: string;
  readonly treatment: Treatment;
  readonly incised: boolean;
  /** In-service moisture: wet is over 19 % (16 % for glulam). */
  readonly service: 'dry' | 'wet';
}

export type SectionChoice =
  | ({ readonly kind: 'solid'; readonly size: string } & WoodChoice)
  | ({
      readonly kind: 'built-up';
      readonly plies: number;
      readonly ply: string;
      /** Plywood strips between the plies: weight and width only. */
      readonly spacers: number;
      readonly spacerThickness: Inches;
      readonly fastening: string;
      readonly plyFastening?: PlyFastening | undefined;
    } & WoodChoice)
  | {
      readonly kind: 'glulam';
      readonly combination: string;
      readonly width: Inches;
      readonly depth: Inches;
      readonly treatment: Treatment;
      readonly service: 'dry' | 'wet';
    }
  | {
      readonly kind: 'lvl';
      readonly grade: string;
      readonly plies: number;
      readonly thickness: Inches;
      readonly depth: Inches;
      readonly fastening: string;
      readonly plyFastening?: PlyFastening | undefined;
      readonly treatment: Treatment;
      readonly service: 'dry' | 'wet';
    };

export type SectionKind = SectionChoice['kind'];

export type FootingChoice =
  | {
      readonly kind: 'round-pier';
      readonly diameter: Inches;
      readonly bottom: Inches;
      readonly top: Inches;
      /** The owner says a rigid slab is poured against it all round, so that it cannot move at the surface. */
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      readonly kind: 'square-pad';
      readonly width: Inches;
      readonly thickness: Inches;
      readonly bottom: Inches;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      readonly kind: 'pier-on-pad';
      readonly diameter: Inches;
      readonly width: Inches;
      readonly thickness: Inches;
      readonly bottom: Inches;
      readonly top: Inches;
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      /** A post set in a drilled hole. */
      readonly kind: 'embedded-post';
      /** Diameter of the hole. */
      readonly diameter: Inches;
      readonly bottom: Inches;
      /** Concrete under the foot of the post; 0 when it stands on the soil. */
      readonly under: Inches;
      readonly backfill: 'concrete' | 'sand' | 'soil';
      readonly slabHolds?: boolean | undefined;
      readonly fc: number;
      readonly steel: string;
    }
  | {
      /** No footing: the post base stands on the patio slab (patio-cover appendix). */
      readonly kind: 'slab';
      readonly fc: number;
      readonly steel: string;
    };
// `bottom` is the depth of the underside below the adjacent finished grade or slab top; `top` is how far the pier
// stands above that surface (0 = flush). A square pad without pier carries its post base at `bottom - thickness`.

export type FootingKind = FootingChoice['kind'];

/** One headed bolt cast in the middle of the footing. */
export interface AnchorChoice {
  /** Nominal diameter. */
  readonly bolt: Inches;
  /** Effective embedment: from the concrete's surface to the bearing face of the head. */
  readonly embedment: Inches;
  /** Specified tensile and yield strength of the bolt's steel. */
  readonly fu: Psi;
  readonly fy: Psi;
}
