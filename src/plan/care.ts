/** The trade's usual cautions, to stand wherever cutting is told. */
export const CARE: readonly string[] = [
  'Cut away from your body, and close the guard after every cut.',
  'Keep your fingers off the ruler’s edge; wear shoes.',
  'Change dull blades; tape old ones before you throw them away.',
  'Unplug the iron; air the room when you starch.',
  'Measure your own cloth after washing and trimming, and sew one block before you cut them all.',
  'Local rules and the maker’s instructions come first.',
];
