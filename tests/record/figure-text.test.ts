import { describe, expect, it } from 'vitest';
import { provenanceText } from '../../src/base/provenance.ts';
import {
  citationWithProvenance,
  dollars,
  figureText,
  fixed,
  momentText,
  numberText,
  priceText,
} from '../../src/record/figure-text.ts';

describe('figures in words', () => {
  it('keeps four significant digits, whole numbers above a thousand', () => {
    expect(numberText(0.041234)).toBe('0.04123');
    expect(numberText(33.2)).toBe('33.2');
    expect(numberText(12345.6)).toBe('12,346');
    expect(numberText(0)).toBe('0');
    expect(numberText(-0)).toBe('0');
  });

  it('never shows an unknown figure as a number', () => {
    expect(numberText(null)).toBe('not known');
    expect(figureText(null, 'psf')).toBe('not known');
    expect(figureText(14.9, 'psf')).toBe('14.9 psf');
    expect(figureText(0.62, '')).toBe('0.62');
  });

  it('rounds to fixed decimals without a negative nought', () => {
    expect(fixed(0.0412, 3)).toBe('0.041');
    expect(fixed(-0.0001, 2)).toBe('0.00');
    expect(fixed(-1.5, 1)).toBe('-1.5');
  });

  it('writes prices with their range', () => {
    expect(dollars(7.5)).toBe('$7.50');
    expect(dollars(1234)).toBe('$1,234');
    expect(priceText({ low: 24, likely: 29, high: 37 })).toBe('$29 per ft² (from $24 to $37)');
  });

  it('says aloud what is remembered or has no source', () => {
    expect(provenanceText('memory')).toBe('from memory, not verified');
    expect(provenanceText('common-practice')).toBe('common practice, no source');
    expect(provenanceText('something new')).toBe('something new');
    expect(citationWithProvenance('Code, table 1', 'memory')).toBe(
      'Code, table 1 (from memory, not verified)',
    );
    expect(citationWithProvenance('Code, table 1 (from memory, not verified)', 'memory')).toBe(
      'Code, table 1 (from memory, not verified)',
    );
    expect(citationWithProvenance('Code, table 1', 'verified')).toBe('Code, table 1');
  });

  it('reads dates', () => {
    expect(momentText('2026-03-14T15:09:26.000Z')).toBe('2026-03-14, 15:09 UTC');
  });
});
