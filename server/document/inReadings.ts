/** Findings of some readings only say in which. */
import type { Finding } from '../../grammar/findings/finding';

/** "In french, german: …". */
export const inReadings = (finding: Finding, readings: readonly string[]): Finding => ({
  ...finding,
  message: `In ${readings.map(nameOf).join(', ')}: ${finding.message}`,
  readings,
});

const nameOf = (reading: string): string => (reading === 'written' ? 'the main text' : reading);
