#include "forecourse/base/default_used.h"

namespace forecourse {

const char* word(DefaultStatus status) {
  switch (status) {
    case DefaultStatus::published:
      return "published";
    case DefaultStatus::common_practice:
      return "common practice";
    case DefaultStatus::illustrative:
      return "illustrative";
    case DefaultStatus::computed:
      return "computed";
  }
  return "illustrative";
}

}  // namespace forecourse
