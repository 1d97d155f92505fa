// A named import, so that the bundle carries the version alone and not the whole of package.json.
import { version } from '../../package.json';

/** Version of this program, from package.json when it was built. */
export const TOOL_VERSION: string = version;

/** SHA-256 of the sources that this program was built from: what a record's figures rest on besides rules and data. */
export const SOURCE_DIGEST: string = process.env.CLADWRIGHT_SOURCE_DIGEST ?? 'unbundled';
