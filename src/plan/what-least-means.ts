/** Over which plans a purchase is proved least: said wherever a proof is, since other ways to cut may need less. */
export const whatLeastMeans = (stacks: boolean): string =>
  'Strips cut like these: straight across, parted by whole cuts from edge to edge that stand square, run along a slant of the ' +
  `blanks, or lean as rulers do${stacks ? ', and stacks between square cuts, cut along the strip' : ''}. ` +
  'Cutting round templates, or cuts of other slants, may take less.';
