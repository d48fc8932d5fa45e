/** The table of commands. */
import type { Entry } from './command';

export const commands: readonly Entry[] = [
  {
    name: 'proof',
    operands: 'FILES…',
    fewest: 1,
    summary: 'Read scores and say what is wrong, doubtful or missing, and where.',
    load: async () => (await import('./proof')).proof,
  },
  {
    name: 'export',
    operands: 'FILES…',
    fewest: 1,
    summary: 'Write scores as MusicXML, MEI, pages, teaching sheets, MIDI, sound, data or texts of one reading.',
    load: async () => (await import('./export')).exportCommand,
  },
  {
    name: 'align',
    operands: 'FILES…',
    fewest: 1,
    summary: 'Lay out the text of scores, so that what sounds together stands together.',
    load: async () => (await import('./align')).align,
  },
  {
    name: 'compare',
    operands: 'FILE [NAMES…]',
    fewest: 1,
    summary:
      'Say what sources and readings have otherwise, bar by bar, and who agrees with whom (as a rule: all sources).',
    load: async () => (await import('./compare')).compare,
  },
  {
    name: 'report',
    operands: 'FILES…',
    fewest: 1,
    summary:
      'Write the critical report: sources, rules in force, an entry for each place, what is supplied, annotations.',
    load: async () => (await import('./report')).report,
  },
  {
    name: 'signs',
    operands: '[FILES…]',
    fewest: 0,
    summary: 'Say how treatises play signs, or where signs stand in scores.',
    load: async () => (await import('./signs')).signs,
  },
  {
    name: 'tune',
    operands: '[FILES…]',
    fewest: 0,
    summary: 'Say how to tune by ear, for a score or by a temperament; of two scores, from the first to the second.',
    load: async () => (await import('./tune')).tune,
  },
  {
    name: 'help',
    operands: '[CODE]',
    fewest: 0,
    summary: 'Explain a finding by its code, or list the codes.',
    load: async () => (await import('./help')).help,
  },
  {
    name: 'demo',
    operands: '',
    fewest: 0,
    summary: 'Proof a sample score and write its MusicXML into ./out.',
    load: async () => (await import('./demo')).demo,
  },
];
