/** What a file can be read as, for whoever is to choose. */
import type { Project } from '../workspace/project';
import type { ChoiceOffer } from './protocol';

export const choiceOffers = ({ analysis, environment }: Project): ChoiceOffer[] =>
  analysis.choices.map((name) => {
    if (name === 'written') return { name, kind: 'written', description: '' };
    const reading = environment.readings.find((one) => one.name === name);
    if (reading !== undefined) return { name, kind: 'reading', description: reading.description };
    return { name, kind: 'source', description: sourceDescription(name, environment.sources) };
  });

/** Of a source, or of a layer of one: `K.2`. */
function sourceDescription(name: string, sources: Project['environment']['sources']): string {
  const [letter, layer] = name.split('.');
  const source = sources.find((one) => one.name === letter);
  const hand = source?.hands.find((one) => String(one.layer) === layer);
  return (layer === undefined ? source?.description : hand?.description) ?? '';
}
