/** What is left of a whole number, counted from below: -1 by 12 leaves 11. */
export const modulo = (n: number, by: number): number => ((n % by) + by) % by;
