import type { Advice } from '../../advice/advice-schema.ts';

/** The first choice with its main figures, or what comes closest: `cladwright-batch-short/1`. */
export function shortAnswer({ name, code_edition, site, considered, ranked, excluded }: Advice) {
  const [first] = ranked;
  const [closest] = excluded;
  return {
    schema: 'cladwright-batch-short/1',
    name,
    code_edition,
    climate_zone: site.climate_zone,
    admitted: considered.admitted,
    first_choice: first
      ? {
          id: first.id,
          title: first.title,
          score: first.score,
          u_factor: first.u_factor,
          r_effective: first.r_effective,
          added_thickness_in: first.added_thickness_in,
          weight_psf: first.weight_psf,
          installed_cost_usd_per_ft2: first.installed_cost_usd_per_ft2,
          cautions: first.cautions.length,
        }
      : null,
    closest:
      !first && closest
        ? { title: closest.title, because: closest.because.map(({ rule, text }) => ({ rule, text })) }
        : null,
  };
}
