/** In the head of the findings, if nothing of the ways out could be fetched. */
export const NoWays = () => <span className="s">Ways out could not be fetched.</span>;
