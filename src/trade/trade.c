#include "trade/trade.h"

#include "base/panic.h"
#include "trade/care.h"
#include "trade/caution.h"
#include "trade/caution_cuts.h"
#include "trade/caution_electric.h"
#include "trade/caution_fire.h"
#include "trade/flush.h"
#include "trade/season.h"
#include "trade/shown.h"
#include "trade/trim_runs.h"
#include "trade/trim_short.h"

void trade_findings(Arena *arena, const Wall *wall, const Layout *layout, const Plan *plan, Findings *findings)
{
    BUG_UNLESS(layout->wall == wall);
    caution_findings(arena, layout, plan, findings);
    electric_findings(arena, layout, plan, findings);
    cut_findings(arena, layout, plan, findings);
    fire_findings(arena, layout, findings);
    season_findings(arena, layout, findings);
    trim_strips(arena, layout, findings);
    trim_short_findings(arena, layout, findings);
    flush_findings(arena, layout, findings);
    shown_findings(arena, layout, plan, findings);
    care_findings(arena, layout, plan, findings);
}
