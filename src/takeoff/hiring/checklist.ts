/** What to settle before, during and after hiring. Practice, not law: your state's law and the contract govern. */

export const LAW =
  'State law decides deposits, licenses, contracts, liens and cancelling. What stands here is practice. Ask your state’s contractor board, and a lawyer where money is large or there is a dispute.';

export const DEPOSITS = [
  'California: the lesser of 10 % or $1,000, and never ahead of work or material (contractor board, 2012 and 2022).',
  'Maryland, Massachusetts, Pennsylvania, Maine: one third at most (a legal summary; confirm).',
  'Elsewhere: look it up before you sign; pay little ahead, and none in cash.',
] as const;

export const CHECKLIST: readonly { readonly title: string; readonly items: readonly string[] }[] = [
  {
    title: 'Before you sign',
    items: [
      'License number looked up with the state board, in force, for this trade.',
      'General liability certificate sent by the insurer, naming you and this address, in force past the end of the work.',
      'Workers’ compensation certificate, or the state’s form for having no employees. Without it an injured worker may be your employee.',
      'Three references of like work, one of them a year old; call them.',
      'Written contract with this scope, the stamped sheets, the take-off and the inspection list attached. “As per plan” on a picture is no scope.',
      'Who pulls the permit is written down. Work begins after it is issued.',
      'Changes only in writing, with price and days, before they are done.',
      'Right to cancel, where the state gives one, is in the contract.',
    ],
  },
  {
    title: 'At every payment',
    items: [
      'The inspection named in the payment schedule is passed and signed on the card.',
      'Conditional lien release from the contractor, each subcontractor and each supplier for this payment; unconditional ones for the payment before.',
      'Tickets of concrete and delivery notes of lumber and trusses are in the folder.',
      'What will be covered has been measured and photographed: size, depth, plumb, connectors, flashing.',
    ],
  },
  {
    title: 'At the end',
    items: [
      'Final inspection passed and the card signed.',
      'Punch list: each item initialled, not applicable, or dated when it was done, with a photo.',
      'Final unconditional releases from all who could have a lien.',
      'Warranties, wrappers, sealed truss sheets and connector instructions handed over.',
      'The retained sum is paid only now.',
    ],
  },
];

export const SOURCES =
  'Practice from a state contractor board’s owner page, owner-builder guides, a university punch list and a legal summary; splits of payments differ, 5 to 10 % and more is usually held back.';
