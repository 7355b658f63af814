/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Readings and pictures of a job. */
#include "shop-fixture.h"

#include <math.h>

#include "invoices.h"
#include "job-readings.h"
#include "photo-pair.h"
#include "photos.h"

static UnsootReadingRow *
boost (gint64 job, const char *stage, const char *typed, const char *unit, double rpm)
{
  UnsootReadingRow *row = unsoot_reading_row_new ();

  row->job_id = job;
  row->stage = g_strdup (stage);
  row->kind = g_strdup ("boost");
  row->typed = g_strdup (typed);
  row->unit = g_strdup (unit);
  row->rpm = rpm;
  row->load_percent = 90.0;
  row->coolant_c = 88.0;
  row->egr_state = g_strdup ("regulated");
  row->barometer_pa = 100000.0;
  row->ambient_c = 18.0;
  return row;
}

static gboolean
add (TestShop *shop, gint64 staff, UnsootReadingRow *row, GError **error)
{
  UnsootActing who = test_as (staff, SHOP_HOUR);

  return unsoot_reading_add (shop->db, &who, row, error);
}

/* NIST SP 811: 1 psi is 6894.757293168361 Pa. */
START_TEST (test_readings)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  g_autoptr (UnsootReadingRow) before = boost (job, "before", "21.5", "psi", 2200.0);
  g_autoptr (UnsootReadingRow) unlike = boost (job, "after", "24", "psi", 1500.0);
  g_autoptr (UnsootReadingRow) after = boost (job, "after", "165 kPa", NULL, 2210.0);

  ck_assert (!add (shop, shop->advisor, before, &error));
  ck_not_allowed (error, "record a reading");
  ck_assert (add (shop, shop->technician, before, &error));
  ck_no_error (error);
  ck_near (before->value, 21.5 * 6894.757293168361, 1e-6);
  ck_ask_text (shop, "SELECT typed FROM readings WHERE id = 1", "21.5");
  ck_assert (!add (shop, shop->technician, unlike, &error));
  ck_constraint (error, "rpm");
  ck_ask (shop, "SELECT count (*) FROM readings", 1);
  ck_assert (add (shop, shop->technician, after, &error));
  ck_no_error (error);
  ck_near (after->value, 165000.0, 1e-6);
  ck_assert_str_eq (after->unit, "kpa");
}
END_TEST

START_TEST (test_readings_that_make_no_sense)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  g_autoptr (UnsootReadingRow) kind = boost (job, "before", "21", "psi", 2200.0);
  g_autoptr (UnsootReadingRow) unit = boost (job, "before", "21", "mi", 2200.0);
  g_autoptr (UnsootReadingRow) stage = boost (job, "during", "21", "psi", 2200.0);
  g_autoptr (UnsootReadingRow) empty = boost (job, "before", NULL, "psi", 2200.0);

  g_free (kind->kind);
  kind->kind = g_strdup ("loudness");
  ck_assert (!add (shop, shop->technician, kind, &error));
  ck_assert_ptr_nonnull (strstr (error->message, "loudness"));
  g_clear_error (&error);
  ck_assert (!add (shop, shop->technician, unit, &error));
  g_clear_error (&error);
  ck_assert (!add (shop, shop->technician, stage, &error));
  ck_invalid (error, "before or after");
  ck_assert (!add (shop, shop->technician, empty, &error));
  ck_invalid (error, "what was read");
  ck_ask (shop, "SELECT count (*) FROM readings", 0);
}
END_TEST

START_TEST (test_corrected_until_it_is_billed)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing technician = test_as (shop->technician, 5 * SHOP_HOUR);
  UnsootActing advisor = test_as (shop->advisor, 6 * SHOP_HOUR);
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);
  g_autoptr (UnsootReadingRow) row = boost (job, "before", "21.5", "psi", 2200.0);

  ck_assert (add (shop, shop->technician, row, &error));
  g_free (row->typed);
  row->typed = g_strdup ("22.5");
  ck_assert (unsoot_reading_save (shop->db, &technician, row, &error));
  ck_ask_text (shop, "SELECT was FROM changes WHERE record = 'readings' AND field = 'typed'",
               "21.5");
  unsoot_job_invoice (shop->db, &advisor, job, &error);
  ck_no_error (error);
  ck_assert (!unsoot_reading_remove (shop->db, &technician, row->id, &error));
  ck_constraint (error, "invoiced");
}
END_TEST

START_TEST (test_pictures)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing technician = test_as (shop->technician, SHOP_HOUR);
  GError *error = NULL;
  g_autoptr (UnsootPhotoRow) photo = unsoot_photo_row_new ();

  photo->job_id = test_quote (shop, shop->vehicle, NULL);
  photo->stage = g_strdup ("before");
  photo->angle = g_strdup ("EGR valve");
  photo->width = 2;
  photo->height = 2;
  photo->jpeg = g_bytes_new_static ("BM not a jpeg", 13);
  ck_assert (!unsoot_photo_add (shop->db, &technician, photo, &error));
  ck_invalid (error, "not a picture");
  g_bytes_unref (photo->jpeg);
  photo->jpeg = g_bytes_new_static ("\xff\xd8\xff\xe0\x00\xff\xd9", 7);
  ck_assert (unsoot_photo_add (shop->db, &technician, photo, &error));
  ck_no_error (error);
  g_autoptr (GPtrArray) photos = unsoot_job_photos (shop->db, photo->job_id, &error);
  ck_assert (g_bytes_equal (((UnsootPhotoRow *) photos->pdata[0])->jpeg, photo->jpeg));
  ck_assert (unsoot_photo_remove (shop->db, &technician, photo->id, &error));
  ck_ask (shop, "SELECT count (*) FROM photos", 0);
}
END_TEST

static gint64
add_picture (TestShop *shop, gint64 job, const char *stage, const char *angle)
{
  UnsootActing technician = test_as (shop->technician, SHOP_HOUR);
  g_autoptr (UnsootPhotoRow) photo = unsoot_photo_row_new ();
  GError *error = NULL;

  photo->job_id = job;
  photo->stage = g_strdup (stage);
  photo->angle = g_strdup (angle);
  photo->width = 2;
  photo->height = 2;
  photo->jpeg = g_bytes_new_static ("\xff\xd8\xff\xe0\x00\xff\xd9", 7);
  unsoot_photo_add (shop->db, &technician, photo, &error);
  ck_no_error (error);
  return photo->id;
}

/* The pairs as they are shown: "angle before/after" by number, 0 where there is none. */
static void
ck_pairs (TestShop *shop, gint64 job, const char *wanted)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) photos = unsoot_job_photos (shop->db, job, &error);
  g_autoptr (GArray) pairs = unsoot_photo_pairs (photos);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootPhotoPair *pair = &g_array_index (pairs, UnsootPhotoPair, i);
      g_string_append_printf (text, "%s%s %d/%d", i > 0 ? ", " : "", pair->angle,
                              pair->before != NULL ? (int) pair->before->id : 0,
                              pair->after != NULL ? (int) pair->after->id : 0);
    }
  ck_assert_str_eq (text->str, wanted);
}

/* One of each stage is shown: the last that was taken, until another is chosen. */
START_TEST (test_pictures_are_paired)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing technician = test_as (shop->technician, SHOP_HOUR);
  GError *error = NULL;
  const gint64 job = test_quote (shop, shop->vehicle, NULL);
  const gint64 first = add_picture (shop, job, "before", "Port 1");
  g_autoptr (GPtrArray) photos = NULL, over = NULL;

  ck_assert_int_eq (first, 1);
  ck_assert_int_eq (add_picture (shop, job, "before", " Port 1 "), 2);
  ck_assert_int_eq (add_picture (shop, job, "after", "Port 1"), 3);
  ck_assert_int_eq (add_picture (shop, job, "after", "Throttle"), 4);
  ck_pairs (shop, job, "Port 1 2/3, Throttle 0/4");
  ck_assert (unsoot_photo_choose (shop->db, &technician, 1, &error));
  ck_pairs (shop, job, "Port 1 1/3, Throttle 0/4");
  photos = unsoot_job_photos (shop->db, job, &error);
  over = unsoot_photos_passed_over (photos, "Port 1");
  ck_assert_uint_eq (over->len, 1);
  ck_assert_int_eq (((UnsootPhotoRow *) over->pdata[0])->id, 2);

  /* It shows the throttle: the other one stands in its place. */
  ck_assert (unsoot_photo_tell (shop->db, &technician, 1, 3, "before", "Throttle", &error));
  ck_no_error (error);
  ck_pairs (shop, job, "Port 1 2/3, Throttle 1/4");
  ck_assert (!unsoot_photo_tell (shop->db, &technician, 1, 3, "before", "Port 1", &error));
  ck_assert (g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT));
  g_clear_error (&error);
  add_picture (shop, job, "before", "Throttle");
  ck_assert (unsoot_photo_remove (shop->db, &technician, 5, &error));
  ck_pairs (shop, job, "Port 1 2/3, Throttle 1/4");
}
END_TEST

static Suite *
reading_deeds_suite (void)
{
  Suite *suite = suite_create ("reading deeds");
  TCase *tcase = tcase_create ("readings");

  tcase_add_test (tcase, test_readings);
  tcase_add_test (tcase, test_readings_that_make_no_sense);
  tcase_add_test (tcase, test_corrected_until_it_is_billed);
  tcase_add_test (tcase, test_pictures);
  tcase_add_test (tcase, test_pictures_are_paired);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (reading_deeds_suite)
