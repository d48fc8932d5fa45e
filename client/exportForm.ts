/** How an export is written: clefs, signs and rhythm, each with its ways in words. What is chosen holds for the next exports, until the extension ends. */
import { l10n, type QuickPickItem, QuickPickItemKind } from 'vscode';
import type { ExportForm } from '../server/features/protocol';

interface Question {
  readonly about: string;
  /** The first is what holds as a rule. */
  readonly ways: readonly { readonly says: string; readonly form: ExportForm }[];
}

/** A pick of it changes how exports are written, and asks again. */
export type FormItem = QuickPickItem & { readonly turns: number };

const questions = (): readonly Question[] => [
  {
    about: l10n.t('Clefs'),
    ways: [
      { says: l10n.t('of the source'), form: {} },
      { says: l10n.t('treble and bass'), form: { clefs: 'modern' } },
    ],
  },
  {
    about: l10n.t('Signs'),
    ways: [
      { says: l10n.t('as is usual in the format'), form: {} },
      { says: l10n.t('as signs'), form: { ornaments: 'sign' } },
      { says: l10n.t('as small notes'), form: { ornaments: 'small' } },
      { says: l10n.t('written out'), form: { ornaments: 'full' } },
      { says: l10n.t('with what they mean above the stave'), form: { ornaments: 'above' } },
    ],
  },
  {
    about: l10n.t('Rhythm'),
    ways: [
      { says: l10n.t('played in readings, written in sources'), form: {} },
      { says: l10n.t('as it is written'), form: { rhythm: 'written' } },
      { says: l10n.t('as it is played'), form: { rhythm: 'played' } },
    ],
  },
];

export class ExportForms {
  private readonly chosen = questions().map(() => 0);

  /** What the server is asked for. */
  form(): ExportForm {
    return Object.assign({}, ...questions().map((question, index) => this.wayOf(question, index).form));
  }

  items(): readonly (QuickPickItem | FormItem)[] {
    const items = questions().map((question, turns) => ({
      label: `${question.about}: ${this.wayOf(question, turns).says}`,
      description: l10n.t('Enter for another way'),
      turns,
    }));
    return [{ label: l10n.t('How it is written'), kind: QuickPickItemKind.Separator }, ...items];
  }

  /** The next way of a question, after the last the first. */
  turn({ turns }: FormItem): void {
    const ways = questions()[turns]?.ways.length ?? 1;
    this.chosen[turns] = ((this.chosen[turns] ?? 0) + 1) % ways;
  }

  private wayOf({ ways }: Question, index: number): Question['ways'][number] {
    return ways[this.chosen[index] ?? 0] as Question['ways'][number];
  }
}
