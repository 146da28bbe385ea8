export const EXAMPLES = [
  { name: '01-gable-scissor-kept-slab', title: 'Gable on scissor trusses', about: 'attached, over a slab that stays' },
  { name: '02-shed-snow-two-storey', title: 'Shed roof in snow country', about: 'on a ledger below a two-storey wall' },
  { name: '04-free-gable-knee-braces', title: 'Free-standing gable', about: 'knee braces, high wind' },
  { name: '05-l-shape-two-roofs', title: 'An L of two roofs', about: 'beams that end on the house' },
  { name: '06-gable-over-roof', title: 'Gable over the old roof', about: 'valleys on a low eave' },
  { name: '03-broken-on-purpose', title: 'A file broken on purpose', about: 'to see what damage looks like' },
] as const;
