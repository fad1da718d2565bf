/**
 * A blank's name as it stands inside a diagram, where room is dear: "A1 mirrored" becomes "A1m". Tables give the name in
 * full beside it.
 */
export const shortName = (blank: string): string => blank.replace(/ mirrored/, 'm');
