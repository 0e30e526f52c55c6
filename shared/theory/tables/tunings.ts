/** Open strings from string 1 (highest) on, in the storage form of pitches; instrument facts, not logic. */
export const tuningTable = {
  standard: ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type TuningId = keyof typeof tuningTable;
