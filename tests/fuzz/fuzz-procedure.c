/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "procedure-text.h"
#include "rig.h"
#include "targets.h"

static void
check_print (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts)
{
  g_autofree char *text = unsoot_procedure_print (procedure, facts);
  g_autoptr (UnsootProcedure) again = NULL;
  g_autoptr (UnsootFamilyFacts) facts_again = NULL;
  GError *error = NULL;

  unsoot_procedure_parse (text, &again, &facts_again, &error);
  FUZZ_CHECK (error == NULL, "printed, not read: %s\n%s", error->message, text);
  FUZZ_CHECK (unsoot_procedure_equal (procedure, again), "another procedure:\n%s", text);
  FUZZ_CHECK (unsoot_family_facts_equal (facts, facts_again), "other facts:\n%s", text);
  g_autofree char *text_again = unsoot_procedure_print (again, facts_again);
  FUZZ_CHECK (strcmp (text, text_again) == 0, "another text:\n%s\n%s", text, text_again);
}

static void
check_faults (const UnsootProcedure *procedure, const GArray *faults)
{
  for (guint i = 0; i < faults->len; i++)
    {
      const UnsootFault *fault = &g_array_index (faults, UnsootFault, i);
      g_autofree char *sentence = unsoot_fault_sentence (fault);
      FUZZ_CHECK (fault->step >= 0 && fault->step <= (int) procedure->steps->len, "step %d",
                  fault->step);
      FUZZ_CHECK (fault->rule != UNSOOT_RULE_NONE && fault->reason != NULL, "step %d", fault->step);
      FUZZ_CHECK (g_utf8_validate (sentence, -1, NULL) && *sentence != '\0', "step %d",
                  fault->step);
    }
}

/* A step that is refused leaves the rig as it was; the checker refuses the same steps. */
static void
check_walk (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts, const GArray *faults)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  guint n = 0;

  for (guint i = 0; i < procedure->steps->len; i++)
    {
      const UnsootStep *step = unsoot_procedure_step (procedure, (int) i);
      g_autofree char *before = unsoot_rig_digest (rig);
      gboolean allowed = unsoot_rig_allows (rig, facts, step, NULL, NULL);
      FUZZ_CHECK (unsoot_rig_apply (rig, facts, step, NULL, NULL) == allowed, "step %u", i);
      if (allowed)
        continue;
      g_autofree char *after = unsoot_rig_digest (rig);
      FUZZ_CHECK (strcmp (before, after) == 0, "step %u: %s\n%s", i, before, after);
      FUZZ_CHECK (n < faults->len && g_array_index (faults, UnsootFault, n).step == (int) i,
                  "step %u is not refused by the checker", i);
      n++;
    }
  FUZZ_CHECK (n == faults->len || n == 0, "%u of %u faults", n, faults->len);
}

void
fuzz_procedure (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  GError *error = NULL;

  if (!fuzz_answer (unsoot_procedure_parse (text, &procedure, &facts, &error), &error))
    {
      FUZZ_CHECK (procedure == NULL && facts == NULL, "refused and taken");
      return;
    }
  g_autoptr (UnsootProcedure) copy = unsoot_procedure_copy (procedure);
  g_autoptr (GArray) faults = unsoot_faults_new ();
  FUZZ_CHECK (unsoot_procedure_equal (procedure, copy), "a copy differs");
  check_print (procedure, facts);
  gboolean passes = unsoot_procedure_check (procedure, facts, faults);
  FUZZ_CHECK (passes == (faults->len == 0), "%u faults", faults->len);
  FUZZ_CHECK (passes == unsoot_procedure_check (procedure, facts, NULL), "two verdicts");
  check_faults (procedure, faults);
  check_walk (procedure, facts, faults);
}
