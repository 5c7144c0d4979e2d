/** A figure of the sheet by its name, in a list of such. */
import { How } from '../working/How.tsx';

interface FactProps {
  /** Name of its working. */
  of: string;
  name: string;
  text: string;
  /** With the rule of a picture before the name. */
  rule?: boolean;
}

export const Fact = ({ of, name, text, rule }: FactProps) => (
  <div>
    <dt>
      {rule && <i className="rule" aria-hidden="true" />} {name}
    </dt>
    <dd className="m">
      <How of={of} what={`${text}, ${name}`}>
        {text}
      </How>
    </dd>
  </div>
);
