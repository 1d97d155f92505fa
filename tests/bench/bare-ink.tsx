// The least that the terminal library can do: one line, then the end. The conversation's start is held against it.
import { render, Text } from 'ink';

const { unmount } = render(<Text>ready</Text>);
unmount();
