/** One caution for the part looked at, where building it can hurt someone. Common practice of the trade, no source. */
const CAUTIONS: readonly (readonly [RegExp, string])[] = [
  [
    /^footing/,
    'Before digging: have the utility locating service mark the ground, dig by hand near marks, shore or slope deep holes and keep people out of them. Pour only after the inspection.',
  ],
  [
    /truss/,
    'Trusses tip over until they are braced: lift and brace them as the plant’s sheets say, with enough hands, and never cut or notch one.',
  ],
  [
    /^(ledger|tie)/,
    'Opening the house wall: switch off the circuits behind it, keep the flashing whole, and hold up whatever the wall carries before anything is cut.',
  ],
  [
    /^(beam|ridge)/,
    'A beam is heavier than it looks: set it from both ends, on posts that are braced both ways, and stand clear below.',
  ],
  [
    /^(rafter|hip|joint, rafter)/,
    'Work from a scaffold or behind a fall guard; brace the first frames before the next go up.',
  ],
];

export const cautionOf = (what: string): string | undefined => CAUTIONS.find(([kind]) => kind.test(what))?.[1];
