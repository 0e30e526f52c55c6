/** The longest message either way, in bytes: an exercise with every option takes under 2 kB, a plan's about as much. */
export const longestMessage = 16_384;
