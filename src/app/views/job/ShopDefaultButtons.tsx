/** Saves this job's bath, rules and papers as the shop's default for new jobs, on request only, and clears it again. */
import { useState } from 'react';
import { keepShopDefault, keptShopDefault, shopDefaultOf } from '#app/state/keeping/shop-default.ts';
import { useToast } from '#app/views/controls/toasts.ts';
import type { JobFile } from '#job/job-file.ts';

export function ShopDefaultButtons({ job }: { readonly job: JobFile }) {
  const say = useToast();
  const [hasDefault, setHasDefault] = useState(() => keptShopDefault() !== undefined);
  const keep = () => {
    keepShopDefault(shopDefaultOf(job));
    setHasDefault(true);
    say('New jobs begin with this bath, these limits and these papers');
  };
  const forget = () => {
    keepShopDefault(undefined);
    setHasDefault(false);
    say('New jobs begin with nothing of their own');
  };
  return (
    <fieldset>
      <legend>Default of the shop</legend>
      <p className="aside">Bath, limits and papers for new jobs; never the sheet.</p>
      <p className="row">
        <button type="button" onClick={keep}>
          Save as the default
        </button>
        {hasDefault && (
          <button type="button" onClick={forget}>
            Forget it
          </button>
        )}
      </p>
    </fieldset>
  );
}
