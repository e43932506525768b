export interface Person {
  readonly userId: string;
  readonly name: string;
  readonly isCoach: boolean;
}

/** Who plays in a terminal chat. Names that differ in case only are one person, in every later session too. */
export interface People {
  /** The person of this name, made when new; `isCoach` makes them the coach for good. */
  meet(name: string, isCoach: boolean): Person;
  list(): readonly Person[];
}

export function createPeople(): People {
  const byKey = new Map<string, Person>();
  return {
    meet(name, isCoach) {
      const key = name.normalize("NFC").toLowerCase();
      const known = byKey.get(key);
      const person = {
        userId: `terminal-${key}`,
        name: known?.name ?? name,
        isCoach: isCoach || (known?.isCoach ?? false),
      };
      byKey.set(key, person);
      return person;
    },
    list: () => [...byKey.values()],
  };
}
