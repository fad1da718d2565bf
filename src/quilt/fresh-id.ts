interface Known {
  readonly id: string;
}

/** An id made of a name, as files spell ids: "Night sky" as "night-sky", or "night-sky-2" where that is taken. */
export function freshIdFor(name: string, taken: readonly Known[], kind: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return firstFree(plain === '' ? kind : plain, '-', (id) => taken.some((one) => one.id === id));
}

/** The name itself, or "Ring 2" where there is a "Ring" already. */
export function freshName(name: string, taken: readonly string[]): string {
  return firstFree(name, ' ', (candidate) => taken.includes(candidate));
}

function firstFree(stem: string, between: string, isTaken: (candidate: string) => boolean): string {
  let candidate = stem;
  for (let number = 2; isTaken(candidate); number++) {
    candidate = `${stem}${between}${number}`;
  }
  return candidate;
}
