// The least that an Ink program can be: what the first prompt's time is measured against.
import { render, Text } from 'ink';

render(<Text>ready</Text>);
setInterval(() => {}, 1000);
