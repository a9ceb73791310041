/** What the address of a link with a pattern has after its number sign. */
export const LINK_MARK = 'pattern=';
