import { describe, expect, it, vi } from 'vitest';
import type { Advice } from '../../src/advice/advice-schema.ts';
import { howToFindOut } from '../../src/advice/find-out.ts';
import { answer, job, KNOWLEDGE, SMALL, withCatalogue } from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const MIAMI = {
  place: { state: 'FL', county: 'Miami-Dade' },
  basic_wind_speed_mph: 175,
  exposure: 'D',
} as const;
const hot = await answer(job(MIAMI));
const cold = await answer(job({ place: { climate_zone: '7' }, fire_separation_ft: 'unknown' }));
const mild = await answer(job({ place: { climate_zone: '4A' } }));

const reason = ({ ranked: [first] }: Advice, rule: string) =>
  first?.reasons.find((one) => one.rule === rule)?.text ?? '';

describe('what the reasons say of moisture', () => {
  it('is that nothing condenses where nothing does, and how much where something does', () => {
    for (const advice of [hot, cold])
      for (const { reasons, figures } of advice.ranked) {
        const peak = Math.round(figures.find(({ id }) => id === 'condensate-peak')?.value ?? Number.NaN);
        expect(reasons.find(({ rule }) => rule === 'vapour.condensate-stays')?.text).toBe(
          peak === 0
            ? 'By the monthly method nothing condenses in any month.'
            : `By the monthly method what condenses (up to ${peak} g/m²) is gone within the year.`,
        );
      }
    expect(reason(hot, 'vapour.condensate-stays')).toContain('nothing condenses in any month');
  });

  it('is why the profile starts from another indoor dew point than the check of the sheathing', () => {
    expect(reason(mild, 'vapour.sheathing-below-dew-point')).toContain(
      'the profile by months takes that of ISO 13788, so its indoor dew point is another',
    );
  });

  it('leaves the insulation share out where no winter month is colder than the indoor dew point', () => {
    expect(reason(mild, 'vapour.exterior-share')).toContain('rests on insulation');
    expect(reason(hot, 'vapour.exterior-share')).toBe('');
  });

  it('is nothing of a winter where no winter month is colder than the indoor dew point', () => {
    for (const { reasons, cautions } of hot.ranked)
      expect(JSON.stringify([reasons, cautions])).not.toContain('three coldest months');
  });
});

describe('what is said of polyethylene in an old wall', async () => {
  const old = { project: 'retrofit', interior_vapour_retarder: 'class-i' } as const;
  // A national laboratory's guide for warm, humid climates and a guide on vapour diffusion (both public, seen): vapour is
  // held back outside there, and the wall dries to the rooms.
  const [south, middle, desert] = await Promise.all(
    ['1A', '4A', '3B'].map((climate_zone) => answer(job({ ...old, place: { climate_zone } }), SMALL)),
  );
  const advised = (advice: Advice | undefined) =>
    (advice?.ranked ?? []).flatMap(({ cautions }) =>
      cautions
        .filter(({ rule }) => rule?.startsWith('vapour.'))
        .map(({ text, remedy }) => `${text} ${remedy}`),
    );

  it('is to hold vapour back outside where damp heat presses inward, never to let more in', () => {
    const said = advised(south).join(' ');
    expect(said).toContain('Hold vapour back outside');
    expect(said).toContain('Do not cool rooms below the outdoor dew point');
    expect(said).not.toMatch(/open to vapour|vapour-open board/);
  });

  it('is to serve both seasons in zone 4A, and to let the wall dry in dry air', () => {
    expect(advised(middle).join(' ')).toContain('Foam boards outside serve both seasons');
    expect(advised(desert).join(' ')).toContain('outer layers through which the wall can dry');
  });

  it('is not said of a cold zone, where the sheet lies on the warm side', () => {
    expect(advised(cold).join(' ')).not.toContain('cooling season');
  });
});

describe('what the cautions say', () => {
  it('of flying debris stands with each wall that has windows, from 130 mph on', () => {
    for (const { cautions } of hot.ranked)
      expect(cautions.find(({ rule }) => rule === 'openings.wind-borne-debris')).toMatchObject({
        kind: 'openings',
        remedy: expect.stringContaining('impact-rated units'),
      });
    expect(JSON.stringify(cold.ranked.map(({ cautions }) => cautions))).not.toContain('debris');
  });

  it('of one-coat stucco is that it is not three coats, where true stucco is asked for', async () => {
    const oneCoat = withCatalogue(
      { claddings: KNOWLEDGE.catalogue.claddings.filter(({ is_one_coat }) => is_one_coat) },
      SMALL,
    );
    const spoken = async (finish: string) =>
      (await answer(job({ finish }), oneCoat)).ranked[0]?.cautions.find(
        ({ rule }) => rule === 'stucco-practice.one-coat-is-not-three-coat',
      );
    expect((await spoken('cement-stucco'))?.remedy).toContain('“three-coat stucco”');
    expect(await spoken('any')).toBeUndefined();
  });

  it('of rules that wait for one thing quotes their titles, sentence or phrase', () => {
    const waiting = cold.ranked[0]?.cautions.find(({ text }) =>
      text.includes('finished face to the lot line'),
    );
    expect(waiting?.text).toMatch(
      /^\d rules wait for something not known \(the distance from the finished face to the lot line\): “.+”, “.+”\.$/,
    );
  });

  it('of what is not known is to find it out, and for one rule alone what to do if it then holds', async () => {
    const cautionsOf = (advice: Advice) => advice.ranked[0]?.cautions ?? [];
    const line = cautionsOf(cold).find(({ text }) => text.includes('finished face to the lot line'));
    expect(line?.remedy).toBe(`Find it out first. ${howToFindOut('fire_separation_ft')}`);
    const open = await answer(
      job({ project: 'retrofit', interior_vapour_retarder: 'unknown', finish: 'any' }),
    );
    const alone = cautionsOf(open).filter(({ remedy }) => remedy?.includes('If the rule then holds:'));
    for (const { remedy } of alone)
      expect(remedy).toMatch(/^Find it out first\. .+\. If the rule then holds: .+/);
    const inside = cautionsOf(open).filter(({ text }) => text.includes('interior vapour retarder'));
    expect(inside.length).toBeGreaterThan(0);
    for (const { remedy } of inside) expect(remedy).toContain(howToFindOut('interior_vapour_retarder'));
  });
});

describe('money in sentences', () => {
  it('has two decimals', () => {
    const said = [hot, cold].flatMap(({ ranked }) =>
      ranked.flatMap(({ gives_up, folded }) => [...gives_up, folded?.words ?? '']),
    );
    const amounts = said.flatMap((text) => text.match(/\$\d+(\.\d+)?/g) ?? []);
    expect(amounts.length).toBeGreaterThan(3);
    for (const amount of amounts) expect(amount).toMatch(/^\$\d+\.\d\d$/);
  });
});

describe('a wall without sheathing', async () => {
  const open = await answer(
    job({ sheathing: 'none', project: 'retrofit', interior_vapour_retarder: 'class-iii' }),
    SMALL,
  );

  it('has a loose barrier over its studs and says what that asks for, and none that would have to be stuck on', () => {
    expect(open.ranked.length).toBeGreaterThan(0);
    for (const { water_resistive_barrier, layers, cautions } of open.ranked) {
      expect(water_resistive_barrier).toMatch(/over the open studs/);
      expect(layers.find(({ role }) => role === 'barrier')?.label).toBe(water_resistive_barrier);
      expect(cautions.find(({ rule }) => rule === 'rain.loose-barrier-on-open-studs')?.text).toContain(
        'roll tape',
      );
    }
    const bonded = open.excluded.filter(({ title }) => /fluid-applied|fully adhered/.test(title));
    expect(bonded.length).toBeGreaterThan(0);
    for (const { because } of bonded)
      expect(because.map(({ rule }) => rule)).toContain('rain.bonded-barrier-on-open-studs');
  });
});

describe('the cautions of the whole answer', () => {
  const spoken = ({ verdicts }: Advice['ranked'][number]) =>
    new Set(verdicts.filter(({ verdict }) => verdict === 'caution').map(({ rule }) => rule));

  it('are those of the first choice; what holds for an alternative alone stands with it', () => {
    let alone = 0;
    for (const advice of [hot, cold, mild]) {
      const general = advice.cautions.flatMap(({ rule }) => (rule ? [rule] : []));
      const [first, ...others] = advice.ranked;
      if (!first) throw new Error('nothing is ranked');
      expect([...spoken(first)]).toEqual(expect.arrayContaining(general));
      for (const other of others)
        for (const rule of [...spoken(other)].filter(
          (id) => id.startsWith('safety.') && !general.includes(id),
        )) {
          alone += 1;
          expect(other.cautions.map((caution) => caution.rule)).toContain(rule);
        }
    }
    expect(alone).toBeGreaterThan(0);
  });
});
