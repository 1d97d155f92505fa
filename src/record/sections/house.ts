import type { Advice } from '../../advice/advice-schema.ts';
import { listOf, present, type RecordBlock } from '../record-document.ts';

/** What a firm's own packs did to the answer; nothing where none was in force. */
export function houseRules({ house }: Advice): RecordBlock[] {
  return present([listOf((house?.sentences ?? []).map((text) => ({ text })))]);
}
