import { Refusal, showValue } from '../base/refusal.ts';

/** The folder of `--save`, if one was named. @throws Refusal for an empty name: an unset variable of a script, mostly */
export function saveFolder(text: string | undefined): string | undefined {
  if (text !== '') return text;
  throw new Refusal({
    field: '--save',
    value: showValue(text),
    accepted: 'Give a folder, for example "records".',
  });
}
