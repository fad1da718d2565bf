import type { RoleSeed } from '../drawn-block.ts';

/** Names of roles brought to ids: the quilt's own where it has one of that name. */
export class RoleList {
  private readonly known: readonly RoleSeed[];
  private readonly seeds = new Map<string, RoleSeed>();

  constructor(known: readonly RoleSeed[]) {
    this.known = known;
  }

  get used(): readonly RoleSeed[] {
    return [...this.seeds.values()];
  }

  idOf(name: string, round: boolean): string {
    const key = name.trim().toLowerCase();
    const found = this.seeds.get(key) ?? this.known.find((role) => role.name.trim().toLowerCase() === key);
    const seed: RoleSeed = found ?? {
      id: this.freshId(key),
      name: name.trim(),
      facing: { to: round ? 'outward' : 'upright' },
    };
    this.seeds.set(key, seed);
    return seed.id;
  }

  private freshId(name: string): string {
    const stem = name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'role';
    const taken = new Set([...this.known, ...this.seeds.values()].map((role) => role.id));
    let id = stem;
    for (let k = 2; taken.has(id); k++) id = `${stem}-${k}`;
    return id;
  }
}
