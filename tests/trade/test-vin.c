/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "vin.h"

static void
check_verdict (const char *text, UnsootVinVerdict verdict, char calculated)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (text);

  ck_assert_msg (check->verdict == verdict, "%s: verdict %d, %s", text, (int) check->verdict,
                 check->sentence != NULL ? check->sentence : "no sentence");
  ck_assert_int_eq (check->calculated, calculated);
  ck_assert ((check->sentence == NULL) == (verdict == UNSOOT_VIN_VALID));
}

START_TEST (the_regulations_own_example)
{
  /* 49 CFR 565.15 (c), tables V and VI */
  ck_assert_int_eq (unsoot_vin_weighted_sum ("1G4AH59H?5G118341"), 411);
  ck_assert_int_eq (unsoot_vin_check_digit ("1G4AH59H?5G118341"), '4');
  check_verdict ("1G4AH59H45G118341", UNSOOT_VIN_VALID, '4');
}
END_TEST

START_TEST (published_numbers)
{
  /* Test data of VIN libraries and textbook pages */
  check_verdict ("1M8GDM9AXKP042788", UNSOOT_VIN_VALID, 'X');
  check_verdict ("11111111111111111", UNSOOT_VIN_VALID, '1');
  check_verdict ("1FACP45EXLF192944", UNSOOT_VIN_VALID, 'X');
  check_verdict ("5GZCZ43D23S812715", UNSOOT_VIN_WRONG_CHECK_DIGIT, '1');
  check_verdict ("1HGCM82643A004352", UNSOOT_VIN_WRONG_CHECK_DIGIT, '3');
  /* 459 mod 11 by hand: 48 49 0 45 36 27 18 90 · 27 16 21 54 10 4 6 8 */
  check_verdict ("WP0ZZZ99ZTS392124", UNSOOT_VIN_UNCHECKED, '8');
}
END_TEST

START_TEST (the_sentence_of_a_wrong_digit)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check ("5GZCZ43D23S812715");

  ck_assert_str_eq (check->sentence,
                    "position 9 shows 2, 1 is calculated; the error may be anywhere");
  ck_assert_int_eq (check->position, 9);
  ck_assert_int_eq (check->shown, '2');
}
END_TEST

START_TEST (typed_with_spaces_and_dashes)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (" 1m8-gdm9a \xe2\x80\x93 xkp\xc2\xa0"
                                                       "042788\n");

  ck_assert_int_eq (check->verdict, UNSOOT_VIN_VALID);
  ck_assert_str_eq (check->vin, "1M8GDM9AXKP042788");
}
END_TEST

static void
check_character (const char *text, int position, const char *part)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (text);

  ck_assert_int_eq (check->verdict, UNSOOT_VIN_WRONG_CHARACTER);
  ck_assert_int_eq (check->position, position);
  ck_assert_msg (strstr (check->sentence, part) != NULL, "%s", check->sentence);
}

START_TEST (characters_that_no_vin_has)
{
  check_character ("1M8GDM9AXKPO42788", 12, "position 12 shows O");
  check_character ("iM8GDM9AXKP042788", 1, "position 1 shows I");
  check_character ("1MQ", 3, "position 3 shows Q");
  check_character ("1M8GDM9ÄXKP042788", 8, "position 8 shows Ä");
  check_character ("1M8GDM9A*KP042788", 9, "position 9 shows *");
  /* 49 CFR 565.15, table VII has no U, Z or 0 */
  check_character ("1M8GDM9AXUP042788", 10, "position 10 shows U");
  check_character ("1M8GDM9AX0P042788", 10, "position 10 shows 0");
  check_character ("1M8GDM9AXZP042788", 10, "position 10 shows Z");
}
END_TEST

START_TEST (wrong_length_and_damage)
{
  g_autoptr (UnsootVinCheck) short_one = unsoot_vin_check ("1M8GDM9AXKP04278");
  g_autoptr (UnsootVinCheck) empty = unsoot_vin_check ("");
  g_autoptr (UnsootVinCheck) damaged = unsoot_vin_check ("1M8\xff"
                                                         "DM9AXKP042788");

  ck_assert_int_eq (short_one->verdict, UNSOOT_VIN_WRONG_LENGTH);
  ck_assert_ptr_nonnull (strstr (short_one->sentence, "this one has 16"));
  ck_assert_int_eq (empty->verdict, UNSOOT_VIN_WRONG_LENGTH);
  ck_assert_int_eq (damaged->verdict, UNSOOT_VIN_WRONG_CHARACTER);
  ck_assert_int_eq (unsoot_vin_check_digit ("1M8"), 0);
  ck_assert_int_eq (unsoot_vin_weighted_sum ("1M8GDM9AXKPO42788"), -1);
}
END_TEST

static void
check_years (const char *vin, UnsootWeightClass weight_class, int now, const char *expected)
{
  UnsootVinYears years = unsoot_vin_model_years (vin, weight_class, now);
  g_autofree char *words = unsoot_vin_years_words (&years);

  if (expected == NULL)
    ck_assert_ptr_null (words);
  else
    ck_assert_str_eq (words, expected);
}

START_TEST (model_years)
{
  /* 49 CFR 565.15, table VII: position 7 tells the cycle up to 10,000 lb only. */
  check_years ("1G4AH59H45G118341", UNSOOT_WEIGHT_D, 2025, "2005");
  check_years ("1G4AH5EH4EG118341", UNSOOT_WEIGHT_H, 2025, "2014");
  check_years ("1G4AH59H4EG118341", UNSOOT_WEIGHT_H, 2025, "1984");
  check_years ("1G4AH59H4EG118341", UNSOOT_WEIGHT_3, 2025, "1984 or 2014");
  check_years ("1G4AH5EH4EG118341", UNSOOT_WEIGHT_8, 2025, "1984 or 2014");
  check_years ("1G4AH59H4EG118341", UNSOOT_WEIGHT_UNKNOWN, 2025, "1984 or 2014");
  check_years ("1G4AH59H4AG118341", UNSOOT_WEIGHT_8, 2025, "1980 or 2010");
  check_years ("1G4AH59H49G118341", UNSOOT_WEIGHT_8, 2039, "2009 or 2039");
}
END_TEST

START_TEST (model_years_ahead_and_abroad)
{
  /* T is 1996 and 2026: a model year may begin in the calendar year before. */
  check_years ("1G4AH59H4TG118341", UNSOOT_WEIGHT_8, 2025, "1996 or 2026");
  check_years ("1G4AH59H4TG118341", UNSOOT_WEIGHT_8, 2024, "1996");
  check_years ("1G4AH5EH4VG118341", UNSOOT_WEIGHT_D, 2024, NULL);
  check_years ("WP0ZZZ99ZTS392124", UNSOOT_WEIGHT_D, 2026, "1996 or 2026");
  check_years ("WP0ZZZ99Z0S392124", UNSOOT_WEIGHT_D, 2026, NULL);
  check_years ("1G4", UNSOOT_WEIGHT_D, 2026, NULL);
}
END_TEST

START_TEST (every_year_code_has_its_year)
{
  const char *codes = "ABCDEFGHJKLMNPRSTVWXY123456789"; /* 49 CFR 565.15, table VII */

  for (int i = 0; i < 30; i++)
    {
      g_autofree char *vin = g_strdup_printf ("1G4AH59H4%cG118341", codes[i]);
      UnsootVinYears years = unsoot_vin_model_years (vin, UNSOOT_WEIGHT_8, 2100);

      ck_assert_uint_eq (years.n, 2);
      ck_assert_int_eq (years.years[0], 1980 + i);
      ck_assert_int_eq (years.years[1], 2010 + i);
    }
}
END_TEST

START_TEST (leading_characters)
{
  g_autofree char *maker = unsoot_vin_leading ("1m8-gdm9axkp042788", UNSOOT_VIN_MAKER);
  g_autofree char *model = unsoot_vin_leading ("1M8GDM9AXKP042788", UNSOOT_VIN_MODEL);

  ck_assert_str_eq (maker, "1M8");
  ck_assert_str_eq (model, "1M8GDM9A");
  ck_assert_ptr_null (unsoot_vin_leading ("1M", UNSOOT_VIN_MAKER));
}
END_TEST

/* A VIN of random allowed characters, with the check digit put in. */
static char *
random_vin (GRand *rand)
{
  static const char allowed[] = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";
  static const char years[] = "ABCDEFGHJKLMNPRSTVWXY123456789";
  char *vin = g_strnfill (UNSOOT_VIN_LENGTH, '0');

  for (int i = 0; i < UNSOOT_VIN_LENGTH; i++)
    vin[i] = allowed[g_rand_int_range (rand, 0, (gint32) strlen (allowed))];
  vin[0] = "12345"[g_rand_int_range (rand, 0, 5)];
  vin[9] = years[g_rand_int_range (rand, 0, 30)];
  vin[8] = unsoot_vin_check_digit (vin);
  return vin;
}

START_TEST (made_vins_pass_and_one_digit_changed_fails)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (565);

  for (int i = 0; i < 5000; i++)
    {
      g_autofree char *vin = random_vin (rand);
      int at = g_rand_int_range (rand, 10, UNSOOT_VIN_LENGTH);
      char other = (char) ('0' + g_rand_int_range (rand, 0, 10));

      check_verdict (vin, UNSOOT_VIN_VALID, vin[8]);
      if (!g_ascii_isdigit (vin[at]) || vin[at] == other)
        continue;
      /* Digits differ by less than 11 and no weight there is 0 mod 11, so it always shows. */
      vin[at] = other;
      ck_assert_int_ne (unsoot_vin_check_digit (vin), vin[8]);
    }
}
END_TEST

static Suite *
vin_suite (void)
{
  Suite *suite = suite_create ("vin");
  TCase *tcase = tcase_create ("vin");

  tcase_add_test (tcase, the_regulations_own_example);
  tcase_add_test (tcase, published_numbers);
  tcase_add_test (tcase, the_sentence_of_a_wrong_digit);
  tcase_add_test (tcase, typed_with_spaces_and_dashes);
  tcase_add_test (tcase, characters_that_no_vin_has);
  tcase_add_test (tcase, wrong_length_and_damage);
  tcase_add_test (tcase, model_years);
  tcase_add_test (tcase, model_years_ahead_and_abroad);
  tcase_add_test (tcase, every_year_code_has_its_year);
  tcase_add_test (tcase, leading_characters);
  tcase_add_test (tcase, made_vins_pass_and_one_digit_changed_fails);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (vin_suite)
