/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "student.h"

#include <math.h>

/* P(|T| < tan (angle) √freedom): each term of the sum follows from the one before it. */
static double
within (double angle, int freedom)
{
  const gboolean odd = freedom % 2 == 1;
  const double square = cos (angle) * cos (angle);
  double term = odd ? cos (angle) : 1, sum = 0;

  for (int i = odd ? 2 : 1; i < freedom; i += 2)
    {
      sum += term;
      term *= square * i / (i + 1);
    }
  return odd ? (angle + sin (angle) * sum) * M_2_PI : sin (angle) * sum;
}

double
unsoot_student_share (double t, int freedom)
{
  double middle;

  g_return_val_if_fail (freedom >= 1, NAN);

  middle = within (atan (fabs (t) / sqrt (freedom)), freedom);
  return t < 0 ? (1 - middle) / 2 : (1 + middle) / 2;
}

/* Halving the angle, which is bounded where t is not. */
double
unsoot_student_quantile (double p, int freedom)
{
  const double wanted = fabs (2 * p - 1);
  double low = 0, high = G_PI_2;

  g_return_val_if_fail (p > 0 && p < 1 && freedom >= 1, NAN);

  for (;;)
    {
      const double middle = (low + high) / 2;
      if (middle <= low || middle >= high)
        return copysign (tan (middle) * sqrt (freedom), p - 0.5);
      if (within (middle, freedom) < wanted)
        low = middle;
      else
        high = middle;
    }
}
