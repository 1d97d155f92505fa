// A named import, so that the bundle carries the version alone and not the whole of package.json.
import { version } from '../../package.json';

/** Version of this program, from package.json when it was built. */
export const TOOL_VERSION: string = version;
