/** Lettering faces. Files stand in assets/fonts (SIL Open Font License 1.1); apps read them and hand bytes to the back-ends. */
export interface Face {
  readonly family: string;
  readonly weight: 400 | 600;
  readonly file: string;
  /** Face that supplies a character this one lacks. */
  readonly fallback?: FaceName;
}

export type FaceName = 'regular' | 'bold' | 'condensed' | 'condensed-bold';

export const FACES: Readonly<Record<FaceName, Face>> = {
  regular: { family: 'IBM Plex Sans', weight: 400, file: 'IBMPlexSans-Regular.ttf' },
  bold: { family: 'IBM Plex Sans', weight: 600, file: 'IBMPlexSans-SemiBold.ttf' },
  condensed: {
    family: 'IBM Plex Sans Condensed',
    weight: 400,
    file: 'IBMPlexSansCondensed-Regular.ttf',
    fallback: 'regular',
  },
  'condensed-bold': {
    family: 'IBM Plex Sans Condensed',
    weight: 600,
    file: 'IBMPlexSansCondensed-SemiBold.ttf',
    fallback: 'bold',
  },
};

export const FACE_NAMES = Object.keys(FACES) as readonly FaceName[];
